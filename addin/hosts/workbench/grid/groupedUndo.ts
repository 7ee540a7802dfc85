import { LocalUndoRedoService, type IUndoRedoItem } from '@univerjs/core';

/** Steps that can be taken back; the grid's own twenty are few for an evening's work on a list. */
const STEPS_KEPT = 100;

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

  /** Pushes what was held since the outermost `begin` as one step. */
  end(): void {
    this.depth -= 1;
    if (this.depth > 0) return;
    const joined = this.takeHeld();
    if (joined) this.pushUndoRedo(joined);
  }

  /** Takes back what was held since `begin`, and pushes nothing. */
  abandon(): void {
    this.depth = 0;
    const joined = this.takeHeld();
    for (const { id, params } of joined?.undoMutations ?? [])
      this._commandService.syncExecuteCommand(id, params);
  }

  private takeHeld(): IUndoRedoItem | undefined {
    const held = this.held;
    this.held = [];
    const [first] = held;
    return (
      first && {
        unitID: first.unitID,
        undoMutations: [...held].reverse().flatMap((item) => item.undoMutations),
        redoMutations: held.flatMap((item) => item.redoMutations),
      }
    );
  }
}
