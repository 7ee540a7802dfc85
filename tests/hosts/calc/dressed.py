"""What the cells of a document look like, and what lies on them and beside them."""

import uno
from com.sun.star.util.NumberFormat import DEFINED

from driven import cell_at, document, service, sheet_of


def number_format(request):
    formats = document(request).NumberFormats
    return formats.getByKey(cell_at(request).NumberFormat).FormatString


def width(request):
    """In digits of the document's ordinary font, as the office measures them."""
    style = document(request).StyleFamilies.getByName("CellStyles").getByName("Default")
    font = uno.createUnoStruct("com.sun.star.awt.FontDescriptor")
    font.Name, font.Height = style.CharFontName, 100
    device = service("com.sun.star.awt.Toolkit").createScreenCompatibleDevice(1, 1)
    digit = device.getFont(font).getStringWidth("0" * 10) / 1000 * style.CharHeight * 2540 / 72
    return sheet_of(request).Columns.getByIndex(request["column"]).Width / digit


def line_told(line):
    return [line.Color, line.OuterLineWidth, line.InnerLineWidth]


def look(request):
    cell = cell_at(request)
    return [
        cell.CharWeight,
        cell.CharHeight,
        cell.CharColor,
        cell.CharPosture.value,
        cell.CellBackColor,
        cell.HoriJustify.value,
        *(line_told(getattr(cell, f"{side}Border")) for side in ("Top", "Bottom", "Left", "Right")),
    ]


def wrapped(request):
    return cell_at(request).IsTextWrapped


def frozen(request):
    controller = document(request).CurrentController
    active = controller.ActiveSheet
    controller.setActiveSheet(sheet_of(request))
    frozen = controller.hasFrozenPanes()
    told = {
        "rows": controller.SplitRow if frozen else 0,
        "columns": controller.SplitColumn if frozen else 0,
    }
    controller.setActiveSheet(active)
    return told


def list_rule(request):
    rule = cell_at(request).Validation
    if rule.Type.value != "LIST":
        return None
    return {"formula": rule.getFormula1(), "message": rule.ErrorMessage}


def area_told(request):
    """Where an address such as $Other.$A$1:$A$20 points."""
    area = sheet_of(request).getCellRangeByName(request["cells"]).RangeAddress
    return {
        "row": area.StartRow,
        "column": area.StartColumn,
        "rows": area.EndRow - area.StartRow + 1,
        "columns": area.EndColumn - area.StartColumn + 1,
    }


def note(request):
    return cell_at(request).Annotation.String or None


def charts(request):
    found = []
    all_charts = sheet_of(request).Charts
    for name in all_charts.ElementNames:
        chart = all_charts.getByName(name).EmbeddedObject
        kinds = chart.getFirstDiagram().getCoordinateSystems()[0].getChartTypes()
        found.append(
            {"id": name, "title": chart.Title.String, "series": sum(len(k.getDataSeries()) for k in kinds)}
        )
    return found


def page(request):
    sheet = sheet_of(request)
    style = document(request).StyleFamilies.getByName("PageStyles").getByName(sheet.PageStyle)
    titles = sheet.getTitleRows()
    repeated = titles.EndRow - titles.StartRow + 1 if sheet.getPrintTitleRows() else 0
    fitted = {"pagesHigh": style.ScaleToPagesY} if style.ScaleToPagesY else {}
    return {"landscape": style.IsLandscape, "repeatRows": repeated, **fitted}


def own_styles(family):
    return sorted(style.Name for style in family if style.isUserDefined())


def lists(request):
    """What a document offers to choose from besides the office's own: styles, and number formats."""
    families, formats = document(request).StyleFamilies, document(request).NumberFormats
    english = uno.createUnoStruct("com.sun.star.lang.Locale", "en", "US", "")
    return {
        "cells": own_styles(families.getByName("CellStyles")),
        "pages": own_styles(families.getByName("PageStyles")),
        "formats": [formats.getByKey(key).FormatString for key in formats.queryKeys(DEFINED, english, False)],
    }


def heights(request):
    """Of a sheet's first rows, hundredths of a millimetre."""
    rows = sheet_of(request).Rows
    return [rows.getByIndex(row).Height for row in range(request["rows"])]
