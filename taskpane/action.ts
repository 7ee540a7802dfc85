import type { Change } from '../addin/workbook/change';
import type { Workbook } from '../addin/workbook/port';

import type { WhyNot } from './offer';
import type { HostServices } from './services';
import type { PaneState } from './state';

/** What an action leaves behind. */
export interface Done {
  /** What it did, or why it did nothing. */
  readonly says: string;
  /** 'warning' where it did nothing. */
  readonly tone: 'good' | 'warning';
  /** Written to the workbook, whole or not at all; with it the action can be undone. */
  readonly change?: Change;
  /** The pane afterwards, from how it stands by then: the user may have typed on meanwhile. */
  readonly after?: (state: PaneState) => PaneState;
}

/** What long work may ask for while it runs. */
export interface Work {
  readonly services: HostServices;
  /** Reads what is too long to be read at every press. */
  readonly read: Workbook['read'];
  /** Shows how far it is (a share of 1) and lets the host breathe; throws `Stopped` where the user pressed Stop. */
  step(text: string, share: number): Promise<void>;
}

/** A press of a button, from the workbook as it was read for it and from what was typed when it was pressed. */
export type Act = (state: PaneState, work: Work) => Done | Promise<Done>;

/** What a button does, in the pane and wherever else a host puts one; it is refused where the pane does not offer it. */
export interface Action {
  readonly whyNot: WhyNot;
  readonly act: Act;
}

/** The user stopped long work; nothing was written. */
export class Stopped extends Error {
  override readonly name = 'Stopped';
}

export const did = (says: string, change?: Change, after?: Done['after']): Done => ({
  says,
  tone: 'good',
  change,
  after,
});

export const refused = (says: string, after?: Done['after']): Done => ({ says, tone: 'warning', after });
