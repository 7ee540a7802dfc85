"""What keeps a document from being written. The office heeds its own locks in part: seen in 7.4, it writes formulas,
widths, charts and pages all the same, leaves looks out without a word, and adds sheets to a protected structure."""


def locks_on(document, touched):
    """Locks that stand in the way of a change that touches so much."""
    sheets = document.Sheets
    there = [sheets.getByName(name) for name in touched.sheets if sheets.hasByName(name)]
    return {
        "readOnly": touched.workbook and document.isReadonly(),
        "structure": touched.structure and document.isProtected(),
        "sheets": [sheet.Name for sheet in there if sheet.isProtected()],
    }
