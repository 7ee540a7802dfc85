"""Charts over the cells, each found again by its id."""

import uno
from com.sun.star.drawing.FillStyle import NONE

from ..office.context import office_context
from .reading import cell_range

_DIAGRAMS = {"bar": "com.sun.star.chart.BarDiagram", "line": "com.sun.star.chart.LineDiagram"}


def _labelled(provider, values, role, label=None):
    context = office_context()
    labelled = context.ServiceManager.createInstanceWithContext(
        "com.sun.star.chart2.data.LabeledDataSequence", context
    )
    sequence = provider.createDataSequenceByRangeRepresentation(values.AbsoluteName)
    sequence.Role = role
    labelled.setValues(sequence)
    if label is not None:
        labelled.setLabel(provider.createDataSequenceByRangeRepresentation(label.AbsoluteName))
    return labelled


def _heading(values):
    """The cell before the values, where it says in words what they are: Calc takes no name but a cell's."""
    at = values.RangeAddress
    across = at.StartRow == at.EndRow and at.StartColumn < at.EndColumn
    row, column = (at.StartRow, at.StartColumn - 1) if across else (at.StartRow - 1, at.StartColumn)
    if row < 0 or column < 0:
        return None
    cell = values.Spreadsheet.getCellByPosition(column, row)
    return cell if cell.String and not cell.Value else None


def _series(provider, values, colour):
    context = office_context()
    series = context.ServiceManager.createInstanceWithContext("com.sun.star.chart2.DataSeries", context)
    series.setData((_labelled(provider, values, "values-y", _heading(values)),))
    series.Color = colour
    return series


def _fill(document, chart, op):
    provider = chart.getDataProvider()
    coordinates = chart.getFirstDiagram().getCoordinateSystems()[0]
    kind = coordinates.getChartTypes()[0]
    series = tuple(
        _series(provider, cell_range(document, one.values), one.colour) for one in op.series
    )
    kind.setDataSeries(series)
    axis = coordinates.getAxisByDimension(0, 0)
    scale = axis.getScaleData()
    scale.Categories = _labelled(provider, cell_range(document, op.labels), "categories")
    axis.setScaleData(scale)


def _shape(sheet, name):
    page = sheet.DrawPage
    for index in range(page.Count):
        shape = page.getByIndex(index)
        if getattr(shape, "PersistName", None) == name:
            return shape
    raise KeyError(name)


def _describe(document, shape, op):
    """Words for those who cannot see the chart. As steps of the undo of their own they would break its order."""
    undo = document.getUndoManager()
    undo.lock()
    try:
        shape.Title = op.title
        shape.Description = op.finding
    finally:
        undo.unlock()


def put_chart(document, op, words):
    """A chart of the same id is replaced."""
    sheet = document.Sheets.getByName(op.sheet)
    charts = sheet.Charts
    if charts.hasByName(op.id):
        charts.removeByName(op.id)
    corner = sheet.getCellByPosition(op.column, op.row).Position
    place = uno.createUnoStruct(
        "com.sun.star.awt.Rectangle", corner.X, corner.Y, op.width, op.height
    )
    first = cell_range(document, op.series[0].values).RangeAddress
    charts.addNewByName(op.id, place, (first,), False, False)
    chart = charts.getByName(op.id).EmbeddedObject
    chart.setDiagram(chart.createInstance(_DIAGRAMS[op.type]))
    _fill(document, chart, op)
    chart.Diagram.Wall.FillStyle = NONE
    chart.HasMainTitle = True
    chart.Title.String = op.title
    chart.HasLegend = len(op.series) > 1
    _describe(document, _shape(sheet, op.id), op)
