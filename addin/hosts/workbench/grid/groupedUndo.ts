import { LocalUndoRedoService, type IUndoRedoItem } from '@univerjs/core';

/** Steps that can be taken back; the grid's own twenty are few for an evening's work on a list. */
const STEPS_KEPT = 100;

/** One step of several of one workbook: undone backwards, done again forwards. */
const joined = (items: readonly IUndoRedoItem[]): IUndoRedoItem => ({
  unitID: items[0]?.unitID ?? '',
  undoMutations: [...items].reverse().flatMap((item) => item.undoMutations),
  redoMutations: items.flatMap((item) => item.redoMutations),
});

/**
 * The grid's undo, able to join what happens between `begin` and `end` into one step. The grid's own joining undoes
 * in forward order, which leaves the earlier edits standing; here the undo runs backwards.
 */
export class GroupedUndo extends LocalUndoRedoService {
  private depth = 0;
  private held: IUndoRedoItem[] = [];

  override pushUndoRedo(item: IUndoRedoItem): void {
    if (this.depth > 0) {
      this.held.push(item);
      return;
    }
    this._getRedoStack(item.unitID, true).length = 0;
    const steps = this._getUndoStack(item.unitID, true);
    steps.push(item);
    if (steps.length > STEPS_KEPT) steps.splice(0, steps.length - STEPS_KEPT);
    this._updateStatus();
  }

  begin(): void {
    this.depth += 1;
  }

  /**
   * Pushes what was held since the outermost `begin` as one step. The grid's cell editor is a document with steps of
   * its own, which are no part of it.
   */
  end(): void {
    this.depth -= 1;
    if (this.depth > 0) return;
    const held = this.takeHeld();
    for (const unitID of new Set(held.map((item) => item.unitID)))
      this.pushUndoRedo(joined(held.filter((item) => item.unitID === unitID)));
  }

  /** Takes back what was held since `begin`, and pushes nothing. */
  abandon(): void {
    this.depth = 0;
    for (const item of this.takeHeld().reverse())
      for (const { id, params } of item.undoMutations) this._commandService.syncExecuteCommand(id, params);
  }

  private takeHeld(): IUndoRedoItem[] {
    const held = this.held;
    this.held = [];
    return held;
  }
}
