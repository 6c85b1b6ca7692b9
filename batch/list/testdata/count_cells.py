"""Counts the cells that are not empty, sheet by sheet, of each workbook named.

One line a sheet: path, sheet name, cells. A workbook that cannot be opened is
left out. Another reader than the tool's own, to compare with.
"""
import sys
import warnings

import openpyxl

warnings.simplefilter("ignore")
for path in sys.argv[1:]:
    try:
        book = openpyxl.load_workbook(path)
        for sheet in book.worksheets:
            count = sum(1 for row in sheet.iter_rows() for cell in row if cell.value not in (None, ""))
            print(path, sheet.title.replace("\n", " "), count, sep="\t")
    except Exception as fault:
        print(path, type(fault).__name__, file=sys.stderr)
