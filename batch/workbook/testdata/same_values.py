# Opens pairs of workbooks, the user's and ours, with another reader than our own and
# compares every cell of the user's: value, type, number format. One line a pair that
# differs or cannot be opened. A pair whose first cannot be opened is passed over.
# With a dash for the first, the second is opened only.
import sys
import warnings

import openpyxl

warnings.simplefilter("ignore")


def told(value):
    return repr(value).split(" at 0x")[0]


def differences(before, after):
    for sheet in before.worksheets:
        now = after[sheet.title]
        # Right of all that the user wrote, empty cells may be filled.
        last = max((c.column for row in sheet.iter_rows() for c in row if c.value is not None), default=0)
        for row in sheet.iter_rows():
            for cell in row:
                if cell.column > last:
                    continue
                same = now.cell(cell.row, cell.column)
                if (told(cell.value), cell.number_format) != (told(same.value), same.number_format):
                    return f"{sheet.title}!{cell.coordinate}: {cell.value!r} {cell.number_format} is {same.value!r} {same.number_format}"
    return ""


compared = 0
for pair in sys.stdin.read().splitlines():
    first, second = pair.split("\t")
    before = None
    if first != "-":
        try:
            before = openpyxl.load_workbook(first)
        except Exception:
            continue
    try:
        after = openpyxl.load_workbook(second)
    except Exception as fault:
        print(second, "cannot be opened:", fault, sep="\t")
        continue
    compared += 1
    if before and (said := differences(before, after)):
        print(second, said, sep="\t")
print(compared, "pairs", file=sys.stderr)
