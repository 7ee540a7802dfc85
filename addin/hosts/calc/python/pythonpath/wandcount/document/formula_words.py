"""Formulas between Calc's own words and the ones every host knows: English names, commas, Sheet!A1."""

from com.sun.star.sheet.AddressConvention import OOO, XL_A1
from com.sun.star.sheet.FormulaLanguage import ENGLISH, OOXML
from com.sun.star.table import CellAddress

_ALL_GROUPS = 0x7FFFFFFF


class FormulaWords:
    """Calc itself parses and prints, so nothing is guessed."""

    def __init__(self, document):
        mapper = document.createInstance("com.sun.star.sheet.FormulaOpCodeMapper")
        self._own = self._parser(document, mapper, ENGLISH, OOO)
        self._common = self._parser(document, mapper, OOXML, XL_A1)

    @staticmethod
    def _parser(document, mapper, language, convention):
        parser = document.createInstance("com.sun.star.sheet.FormulaParser")
        parser.OpCodeMap = mapper.getAvailableMappings(language, _ALL_GROUPS)
        parser.FormulaConvention = convention
        return parser

    def common(self, formula, sheet, row, column):
        """The formula of a cell in common words; braces of an array formula are left away."""
        text = formula[1:-1] if formula.startswith("{=") else formula
        at = CellAddress(sheet, column, row)
        return "=" + self._common.printFormula(self._own.parseFormula(text[1:], at), at)

    def own(self, formula, sheet, row, column):
        """A formula in common words as Calc's cells take it."""
        return self.own_below(formula, sheet, row, column, row)

    def own_below(self, formula, sheet, row, column, to):
        """The same for a cell of another row that the formula is copied to."""
        tokens = self._common.parseFormula(formula[1:], CellAddress(sheet, column, row))
        return "=" + self._own.printFormula(tokens, CellAddress(sheet, column, to))
