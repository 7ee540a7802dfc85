/** The part of the browser's file dialogs that is used here; not every browser has it. */
interface FileHandle {
  readonly name: string;
  createWritable(): Promise<{ write(data: Blob): Promise<void>; close(): Promise<void> }>;
}
type SavePicker = (options: {
  readonly suggestedName: string;
  readonly types: readonly { readonly description: string; readonly accept: Record<string, string[]> }[];
}) => Promise<FileHandle>;

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';

const picker = (): SavePicker | undefined =>
  (window as unknown as { showSaveFilePicker?: SavePicker }).showSaveFilePicker;

/** Hands a file to the browser's downloads. */
export const download = (name: string, blob: Blob): void => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
};

export interface DiskFile {
  /** Writes over the file that was chosen before, or asks for one; resolves to its name, or undefined where the user asked to stop. */
  save(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<string | undefined>;
  /** The next saving asks again where to. */
  forget(): void;
}

/** The file on the user's disk. A browser without file dialogs puts each saving into its downloads. */
export const diskFile = (): DiskFile => {
  let chosen: FileHandle | undefined;
  return {
    forget: () => {
      chosen = undefined;
    },
    save: async (name, bytes) => {
      const blob = new Blob([bytes], { type: XLSX });
      const ask = picker();
      if (!ask) {
        download(name, blob);
        return name;
      }
      try {
        chosen ??= await ask({
          suggestedName: name,
          types: [{ description: 'Spreadsheet', accept: { [XLSX]: ['.xlsx'] } }],
        });
      } catch (reason) {
        if (reason instanceof DOMException && reason.name === 'AbortError') return undefined;
        throw reason;
      }
      const writing = await chosen.createWritable();
      await writing.write(blob);
      await writing.close();
      return chosen.name;
    },
  };
};
