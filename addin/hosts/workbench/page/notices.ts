/** What a notice offers to do; the notice goes away when it is pressed. */
export interface NoticeAction {
  readonly label: string;
  readonly press: () => void;
}

export interface Notice {
  readonly text: string;
  readonly tone: 'plain' | 'warning';
  /** It tells of work that goes on, with how far it is, and goes away by itself; it offers no button to close it. */
  readonly atWork?: true;
  readonly actions?: readonly NoticeAction[];
}

export interface Notices {
  /** Shows a notice and returns what takes it away. One of the same id takes the place of the old one. */
  show(id: string, notice: Notice): () => void;
  clear(id: string): void;
  /** How far the work is that a notice tells of; nothing where it is not shown. */
  progress(id: string, done: number, of: number): void;
}

/** The count beside the bar is for eyes alone: read out at every step, it would drown everything else. */
const progressBar = (): readonly [HTMLProgressElement, HTMLElement] => {
  const bar = document.createElement('progress');
  bar.setAttribute('aria-label', 'Rows read');
  const count = document.createElement('span');
  count.setAttribute('aria-hidden', 'true');
  return [bar, count];
};

/** Notices above the work: read out when they come, there until they are answered or closed. */
export const openNotices = (holder: HTMLElement): Notices => {
  const shown = new Map<string, HTMLElement>();
  const clear = (id: string): void => {
    shown.get(id)?.remove();
    shown.delete(id);
  };
  const button = (label: string, press: () => void): HTMLButtonElement => {
    const element = document.createElement('button');
    element.type = 'button';
    element.textContent = label;
    element.addEventListener('click', press);
    return element;
  };
  return {
    clear,
    progress: (id, done, of) => {
      const bar = shown.get(id)?.querySelector('progress');
      if (!bar) return;
      [bar.max, bar.value] = [of, done];
      bar.nextElementSibling!.textContent = `${done.toLocaleString('en')} of ${of.toLocaleString('en')} rows`;
    },
    show: (id, { text, tone, atWork, actions = [] }) => {
      clear(id);
      const element = document.createElement('div');
      element.className = `notice ${tone}`;
      element.setAttribute('role', tone === 'warning' ? 'alert' : 'status');
      const words = document.createElement('p');
      words.textContent = text;
      element.append(words, ...(atWork ? progressBar() : []));
      for (const { label, press } of actions)
        element.append(
          button(label, () => {
            clear(id);
            press();
          }),
        );
      if (actions.length === 0 && !atWork) element.append(button('Close', () => clear(id)));
      shown.set(id, element);
      holder.append(element);
      return () => clear(id);
    },
  };
};
