# Compares every cell of the first workbook with the same cell of the second:
# value, formula, number format, font, fill, border, alignment, comment, link; and
# what a sheet and the workbook have besides cells. Prints what differs; exit 1 if
# anything does.
import sys
import warnings
import openpyxl
from openpyxl.cell.cell import MergedCell

warnings.simplefilter("ignore")
macros = sys.argv[1].endswith("m")
before = openpyxl.load_workbook(sys.argv[1], keep_vba=macros)
after = openpyxl.load_workbook(sys.argv[2], keep_vba=macros)
bad, cells, others = [], 0, 0


def told(x):
    return repr(x).replace(before.path or "", "")


def compare(where, what, a, b):
    global others
    others += 1
    if a != b:
        bad.append(f"{where}: {what} was {a!s:.200}, is {b!s:.200}")


def rules(sheet):
    return {str(r.sqref): [told(x) for x in r.rules] for r in sheet.conditional_formatting}


def tables(sheet):
    return {n: getattr(t, "ref", t) for n, t in sheet.tables.items()}


def heights(sheet):
    f = sheet.sheet_format  # the depth of column groups is ours too: we group columns of our own
    return (f.baseColWidth, f.defaultColWidth, f.defaultRowHeight, f.customHeight, f.zeroHeight, f.outlineLevelRow)


def names(book):
    kept = book.defined_names
    found = kept.definedName if hasattr(kept, "definedName") else kept.values()
    return {(d.name, d.localSheetId): d.attr_text for d in found}


for sheet in before.worksheets:
    now = after[sheet.title]
    for row in sheet.iter_rows():
        for cell in row:
            cells += 1
            same = now.cell(cell.row, cell.column)
            if type(cell.value) is not type(same.value) or told(cell.value).split(" at 0x")[0] != told(same.value).split(" at 0x")[0]:
                bad.append(f"{sheet.title}!{cell.coordinate}: {cell.value!r} is {same.value!r}")
            if isinstance(cell, MergedCell):
                continue
            for what in ("data_type", "number_format", "font", "fill", "border", "alignment", "protection", "hyperlink"):
                if repr(getattr(cell, what)) != repr(getattr(same, what)):
                    bad.append(f"{sheet.title}!{cell.coordinate}: {what} differs")
            if (cell.comment and (cell.comment.text, cell.comment.author)) != (same.comment and (same.comment.text, same.comment.author)):
                bad.append(f"{sheet.title}!{cell.coordinate}: comment differs")
    for what in ("merged_cells", "data_validations", "print_area", "print_title_rows", "print_title_cols", "auto_filter", "freeze_panes", "sheet_state", "protection",
                 "page_setup", "page_margins", "row_breaks", "col_breaks"):
        # What the user set stays; beside our columns, what they left unset may be set.
        if what in ("print_area", "print_title_rows", "print_title_cols", "freeze_panes") and not getattr(sheet, what) and now.max_column > sheet.max_column:
            continue
        compare(sheet.title, what, str(getattr(sheet, what)), str(getattr(now, what)))
    compare(sheet.title, "heights and widths by default", heights(sheet), heights(now))
    compare(sheet.title, "header", sheet.oddHeader.left.text, now.oddHeader.left.text)
    compare(sheet.title, "footer", sheet.oddFooter.center.text, now.oddFooter.center.text)
    compare(sheet.title, "tab colour", str(sheet.sheet_properties.tabColor), str(now.sheet_properties.tabColor))
    compare(sheet.title, "tables", tables(sheet), tables(now))
    compare(sheet.title, "pictures", len(sheet._images), len(now._images))
    compare(sheet.title, "charts", len(sheet._charts), len(now._charts))
    compare(sheet.title, "pivots", len(sheet._pivots), len(now._pivots))
    had, has = rules(sheet), rules(now)
    for where in had:
        compare(sheet.title, f"conditional format of {where}", had[where], has.get(where))
    for letter, dim in sheet.column_dimensions.items():
        if letter in now.column_dimensions:
            got = now.column_dimensions[letter]
            compare(sheet.title, f"column {letter}", (dim.width, dim.hidden, dim.outlineLevel), (got.width, got.hidden, got.outlineLevel))
    for number, dim in sheet.row_dimensions.items():
        got = now.row_dimensions[number]
        compare(sheet.title, f"row {number}", (dim.height, dim.hidden, dim.outlineLevel), (got.height, got.hidden, got.outlineLevel))
has = names(after)
for name, text in names(before).items():
    compare("workbook", f"name {name}", text, has.get(name))
compare("workbook", "links", len(before._external_links), len(after._external_links))
compare("workbook", "protection", told(before.security), told(after.security))
compare("workbook", "first sheets", before.sheetnames, after.sheetnames[:len(before.sheetnames)])
print(f"{cells} cells and {others} other things compared, {len(bad)} differences")
for line in bad[:20]:
    print(line)
sys.exit(1 if bad else 0)
