/** An entry of the menu: a command of the component, `open.<section>` or `press.<action>` of the pane. */
export interface Entry {
  readonly title: string;
  readonly command: string;
}

/** The menu beside the office's own: the pane's sections and their actions, and what only Calc needs. */
export interface Menu {
  readonly title: string;
  readonly entries: readonly (Entry | { readonly title: string; readonly entries: readonly Entry[] })[];
}

/** A tilde stands before the letter that the keyboard chooses an entry by; no two of one menu are the same. */
export const menu: Menu = {
  title: '~Rose feeding',
  entries: [
    { title: 'Show the ~pane', command: 'show' },
    {
      title: '~Garden',
      entries: [
        { title: '~Garden', command: 'open.garden' },
        { title: '~Make the plant inventory', command: 'press.garden.adopt' },
        { title: '~Begin an empty garden', command: 'press.garden.new' },
        { title: 'Keep the ~doses', command: 'press.doses.keep' },
        { title: 'Keep the ~walk', command: 'press.beds.keep' },
        { title: '~Put back what was taken away', command: 'press.garden.restore' },
      ],
    },
    {
      title: 'R~ig',
      entries: [
        { title: '~Rig', command: 'open.rig' },
        { title: '~Keep this rig', command: 'press.rig.keep' },
      ],
    },
    {
      title: '~Mix',
      entries: [
        { title: '~Mix', command: 'open.mix' },
        { title: '~Keep this mix', command: 'press.mix.keep' },
        { title: 'Keep this ~product', command: 'press.product.keep' },
      ],
    },
    {
      title: 'R~ound',
      entries: [
        { title: '~Round', command: 'open.round' },
        { title: '~Make the card', command: 'press.round.card' },
        { title: '~Print the card', command: 'press.round.print' },
      ],
    },
    {
      title: '~Log',
      entries: [
        { title: '~Log', command: 'open.log' },
        { title: '~Write the log line', command: 'press.log.write' },
      ],
    },
    {
      title: '~Tank what-if',
      entries: [
        { title: '~Tank what-if', command: 'open.tanks' },
        { title: '~Write the what-if sheet', command: 'press.tanks.write' },
      ],
    },
    { title: '~Calculate again', command: 'tryAgain' },
    { title: 'Choose the ~node program…', command: 'chooseNode' },
    { title: '~Show the log', command: 'showLog' },
    { title: '~Help', command: 'help' },
  ],
};
