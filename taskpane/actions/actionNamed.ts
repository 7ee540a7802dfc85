import type { Action } from '../action';

import { gardenActions } from './gardenActions';
import { logActions } from './logActions';
import { mixActions } from './mixActions';
import { rigActions } from './rigActions';
import { roundActions } from './roundActions';
import { tankActions } from './tankActions';

/** Every action by its button's id. */
export const actions: Readonly<Record<string, Action>> = {
  ...gardenActions,
  ...rigActions,
  ...mixActions,
  ...roundActions,
  ...logActions,
  ...tankActions,
};

/** The action of a button; undefined for an id that no section has. */
export const actionNamed = (id: string): Action | undefined =>
  Object.hasOwn(actions, id) ? actions[id] : undefined;
