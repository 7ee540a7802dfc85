const PAGE = 'message.html';

/** Shows a sentence in a small window of the program's, for what a button of the ribbon has to say. */
export const say = (text: string): void => {
  const address = new URL(`${PAGE}#${encodeURIComponent(text)}`, document.baseURI).href;
  Office.context.ui.displayDialogAsync(
    address,
    { height: 24, width: 32, displayInIframe: true },
    ({ status, error }) => {
      if (status === Office.AsyncResultStatus.Failed) console.error(text, error);
    },
  );
};
