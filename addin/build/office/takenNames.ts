import * as engine from '@univerjs/engine-formula';

// Names of macro functions, from memory.
const MACROS =
  'ALERT BEEP CALL CLEAR CLOSE COPY CUT DELETE ECHO ERROR EVALUATE FILES FORMULA GOTO HALT HELP INPUT INSERT MESSAGE ' +
  'NAMES NEW NEXT NOTE OPEN PASTE PRINT QUIT RESTART RESULT RETURN RUN SAVE SELECT SIZE SORT STEP STYLE UNDO VOLATILE ' +
  'WAIT WINDOWS';

/** Names that a function may not have: those of a spreadsheet's own functions, as the workbench's engine knows them. */
export const takenNames: ReadonlySet<string> = new Set([
  ...Object.entries(engine)
    .filter(([name]) => name.startsWith('FUNCTION_NAMES_'))
    .flatMap(([, kind]) => Object.values(kind as Record<string, string>)),
  ...MACROS.split(' '),
]);
