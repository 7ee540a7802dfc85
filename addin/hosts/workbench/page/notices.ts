/** What a notice offers to do; the notice goes away when it is pressed. */
export interface NoticeAction {
  readonly label: string;
  readonly press: () => void;
}

export interface Notice {
  readonly text: string;
  readonly tone: 'plain' | 'warning';
  /** It goes away by itself, and offers no button. */
  readonly passing?: true;
  readonly actions?: readonly NoticeAction[];
}

export interface Notices {
  /** Shows a notice and returns what takes it away. One of the same id takes the place of the old one. */
  show(id: string, notice: Notice): () => void;
  clear(id: string): void;
}

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
    show: (id, { text, tone, passing, actions = [] }) => {
      clear(id);
      const element = document.createElement('div');
      element.className = `notice ${tone}`;
      element.setAttribute('role', tone === 'warning' ? 'alert' : 'status');
      const words = document.createElement('p');
      words.textContent = text;
      element.append(words);
      for (const { label, press } of actions)
        element.append(
          button(label, () => {
            clear(id);
            press();
          }),
        );
      if (actions.length === 0 && !passing) element.append(button('Close', () => clear(id)));
      shown.set(id, element);
      holder.append(element);
      return () => clear(id);
    },
  };
};
