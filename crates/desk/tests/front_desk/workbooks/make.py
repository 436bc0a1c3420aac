"""Writes the workbooks of this folder with openpyxl, a general-purpose library, and one with LibreOffice.

Run with: python3 make.py. The tests read the committed files; nothing runs this script for them.
The models belong to the invented shop of the tests.
"""

import datetime
import pathlib
import subprocess
import zipfile

import openpyxl

HERE = pathlib.Path(__file__).parent


def book(name, rows, change=None):
    made = openpyxl.Workbook()
    made.active.title = "Stock"
    for row in rows:
        made.active.append(row)
    if change:
        change(made)
    made.save(HERE / name)


# A supplier's list: a title above, headings of its own, ounces, a column nobody needs, numbers as numbers.
book(
    "supplier.xlsx",
    [
        ["Delivery of 4 March", None, None, None, None],
        [],
        ["Label", "Colour", "Iron", "Weight (oz)", "Shelf"],
        ["Q-1", "chrome", 7, 9.35, "S7"],
        ["Q-2", "black", 7, "9,36", "S7"],
        ["Q-3", "chrome", 8, 9.61, None],
        ["Q-4", "chrome", 9, 265.0, None],
        ["Q-2", "chrome", 7, 9.35, None],
    ],
)


def formulas(made):
    sheet = made.active
    sheet["E2"] = "=D2*2"
    sheet["D3"] = "=260+5.5"
    sheet["D4"] = datetime.date(2031, 6, 7)
    sheet["D5"] = "#DIV/0!"
    sheet["D5"].data_type = "e"


# openpyxl writes formulas without their values.
book(
    "formulas.xlsx",
    [["code", "model", "number", "mass_g", "twice"]] + [[f"F-{n}", "SISKIN", 7, 265.1, None] for n in range(1, 5)],
    formulas,
)


def merged(made):
    made.active.merge_cells("C3:C4")


book(
    "merged.xlsx",
    [["code", "model", "number", "mass_g"]] + [[f"M-{n}", "SISKIN", 7, 265.0 + n / 10] for n in range(1, 5)],
    merged,
)


def merged_headings(made):
    made.active.merge_cells("C1:D1")


book(
    "merged-headings.xlsx",
    [["code", "model", "number", "mass_g"], ["M-9", "SISKIN", 7, 265.0]],
    merged_headings,
)


def sheets(made):
    made.active.title = "Read me"
    made.active["A1"] = None
    second = made.create_sheet("Heads")
    second.append(["code", "model", "number", "mass"])
    second.append(["W-1", "SISKIN", "P", 280.5])
    made.create_sheet("Grips").append(["code", "model", "mass"])
    made["Grips"].append(["W-2", "OLIVINE", 50])


book("sheets.xlsx", [], sheets)


def far(made):
    made.active.cell(row=1_048_576, column=16_384, value="far")


# One cell in the last corner: a reader that makes room for all before it would need 17 thousand million cells.
book("far.xlsx", [["code", "model", "number", "mass_g"], ["X-1", "SISKIN", 7, 265.0]], far)

# LibreOffice calculates formulas and keeps their values.
(HERE / "office.csv").write_text(
    "code,model,number,mass (g),box\nL-1,SISKIN,7,=260+5.1,b\nL-2,SISKIN,7,265.25,=1/4\n", encoding="utf-8"
)
# Separator, quote, UTF-8, from line 1; the last but one word: formulas are calculated.
FILTER = "CSV:44,34,76,1,,0,false,true,false,false,false,-1,true"
subprocess.run(
    ["soffice", "--headless", f"--infilter={FILTER}", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", HERE,
     HERE / "office.csv"],
    check=True,
)
# The old kind, and one that is no workbook of this kind at all.
subprocess.run(["soffice", "--headless", "--convert-to", "xls:MS Excel 97", "--outdir", HERE, HERE / "office.csv"], check=True)
subprocess.run(["soffice", "--headless", "--convert-to", "ods", "--outdir", HERE, HERE / "office.csv"], check=True)
(HERE / "office.csv").unlink()
with zipfile.ZipFile(HERE / "no-book.zip", "w") as made:
    made.writestr("list.txt", "code,model")
