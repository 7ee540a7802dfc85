import { memoryWorkbook, type MemoryWorkbook } from '../../addin/workbook/memoryWorkbook';
import type { Change } from '../../addin/workbook/change';
import type { Garden } from '../../addin/workbook/garden';
import type { Snapshot, Workbook } from '../../addin/workbook/port';
import { gardenAreas, readGarden } from '../../addin/workbook/readGarden';
import { newGarden } from '../../addin/workbook/useCases/newGarden';

/** Everything that a use case needs to have read. */
export const snapshotOf = async (workbook: Workbook): Promise<Snapshot> =>
  workbook.read(gardenAreas(await workbook.outline()));

export const gardenOf = async (workbook: Workbook): Promise<Garden> => readGarden(await snapshotOf(workbook));

/** Applies what a use case answers to the workbook as it stands. */
export const act = async (workbook: Workbook, useCase: (snapshot: Snapshot) => Change): Promise<Change> => {
  const change = useCase(await snapshotOf(workbook));
  await workbook.apply(change);
  return change;
};

/** A workbook with a new garden in US measures. */
export const newGardenWorkbook = async (): Promise<MemoryWorkbook> => {
  const workbook = memoryWorkbook();
  await act(workbook, (snapshot) => newGarden(snapshot, 'US'));
  return workbook;
};
