import type { Workbench } from '../workbench';

/** Opens a file that is dropped anywhere on the page, which a browser would otherwise show in the page's place. */
export const takeDroppedFiles = (bench: Pick<Workbench, 'openFile'>): void => {
  const brings = ({ dataTransfer }: DragEvent): boolean => dataTransfer?.types.includes('Files') === true;
  addEventListener('dragover', (event) => brings(event) && event.preventDefault(), { capture: true });
  addEventListener(
    'drop',
    (event) => {
      if (!brings(event)) return;
      event.preventDefault();
      // The grid takes drops of its own kinds.
      event.stopPropagation();
      const [dropped] = event.dataTransfer?.files ?? [];
      if (dropped) void bench.openFile(dropped);
    },
    { capture: true },
  );
};
