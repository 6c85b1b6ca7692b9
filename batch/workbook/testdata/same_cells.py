# Compares every cell of the first workbook with the same cell of the second:
# value, formula, number format, font, fill, border, alignment; and what a sheet
# has besides cells. Prints what differs; exit 1 if anything does.
import sys
import openpyxl

before = openpyxl.load_workbook(sys.argv[1])
after = openpyxl.load_workbook(sys.argv[2])
bad, cells = [], 0
for sheet in before.worksheets:
    now = after[sheet.title]
    for row in sheet.iter_rows():
        for cell in row:
            cells += 1
            same = now.cell(cell.row, cell.column)
            if cell.value != same.value:
                bad.append(f"{sheet.title}!{cell.coordinate}: {cell.value!r} is {same.value!r}")
            for what in ("number_format", "font", "fill", "border", "alignment", "protection"):
                if repr(getattr(cell, what)) != repr(getattr(same, what)):
                    bad.append(f"{sheet.title}!{cell.coordinate}: {what} differs")
    for what in ("merged_cells", "data_validations", "print_area", "print_title_rows", "auto_filter", "freeze_panes"):
        a, b = getattr(sheet, what), getattr(now, what)
        if str(a) != str(b):
            bad.append(f"{sheet.title}: {what} was {a}, is {b}")
    for letter, dim in sheet.column_dimensions.items():
        if letter in now.column_dimensions and dim.width != now.column_dimensions[letter].width:
            bad.append(f"{sheet.title}: width of {letter} differs")
    for number, dim in sheet.row_dimensions.items():
        if dim.height != now.row_dimensions[number].height:
            bad.append(f"{sheet.title}: height of row {number} differs")
print(f"{cells} cells compared, {len(bad)} differences")
for line in bad[:20]:
    print(line)
sys.exit(1 if bad else 0)
