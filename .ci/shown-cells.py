"""Fails when a cell of an executed notebook reports an error, or ends in a value and shows nothing: shown-cells.py NOTEBOOK"""
import json
import sys

cells = [c for c in json.load(open(sys.argv[1], encoding="utf-8"))["cells"] if c["cell_type"] == "code"]
bad = []
for number, cell in enumerate(cells, 1):
    source = "".join(cell["source"]).rstrip()
    shown = [o for o in cell["outputs"] if o.get("text") or o.get("data")]
    if any(o["output_type"] == "error" for o in cell["outputs"]):
        bad.append(f"code cell {number} fails")
    elif source and source[-1] not in ";}" and not source.splitlines()[-1].startswith("#") and not shown:
        bad.append(f"code cell {number} shows nothing")
    elif any("data" in o and not any("".join(v).strip() for v in o["data"].values()) for o in shown):
        bad.append(f"code cell {number} shows an empty value")
for line in bad:
    print(f"{sys.argv[1]}: {line}")
sys.exit(1 if bad or not cells else 0)
