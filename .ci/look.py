"""Looks at the outputs of a run: look.py WORKBOOK RESULTS TRAVELLER_TEXT DOCUMENT."""
import csv
import json
import math
import sys

import openpyxl

workbook, results, traveller, document = sys.argv[1:]
job = json.load(open(document, encoding="utf-8"))
marks = [joint["mark"] for joint in job["joints"]]
faults = []

with open(results, encoding="utf-8-sig", newline="") as f:
    rows = list(csv.DictReader(f))
if [row["mark"] for row in rows] != marks:
    faults.append(f"the results CSV has {len(rows)} rows, the document {len(marks)} joints, or in another order")

text = open(traveller, encoding="utf-8").read()
squeezed = "".join(text.split())
for mark in marks:
    if "".join(mark.split()) not in squeezed:
        faults.append(f"mark {mark} is not in the traveller")

book = openpyxl.load_workbook(workbook)
values = openpyxl.load_workbook(workbook, data_only=True)
for name in ["Totals", "Buy list", "Checks", "Rates", "Basis"]:
    if not any(sheet.startswith(name) for sheet in book.sheetnames):
        faults.append(f"the workbook has no sheet {name}")
formulas = empty = 0
for sheet in book:
    for row in sheet.iter_rows():
        for cell in row:
            stored = values[sheet.title][cell.coordinate].value
            if isinstance(cell.value, str) and cell.value.startswith("="):
                formulas += 1
                empty += stored is None
            if isinstance(stored, float) and not math.isfinite(stored) or isinstance(stored, str) and stored.startswith("#"):
                faults.append(f"{sheet.title}!{cell.coordinate} holds {stored!r}")
if not formulas:
    faults.append("the workbook has no live formulas")

print(f"{len(marks)} joints; {len(book.sheetnames)} sheets: {', '.join(book.sheetnames)}; {formulas} formulas, {empty} without a stored value")
for fault in faults:
    print("fault:", fault)
sys.exit(bool(faults))
