import json, sys, ezdxf
doc, audit = ezdxf.readfile(sys.argv[1]), None
audit = doc.audit()
pieces = []
for ref in doc.modelspace().query("INSERT"):
    block = doc.blocks[ref.dxf.name]
    boundary = [e for e in block if e.dxftype() == "POLYLINE" and e.dxf.layer == "1"]
    assert len(boundary) == 1 and boundary[0].is_closed
    pieces.append({
        "texts": "; ".join(e.dxf.text for e in block if e.dxftype() == "TEXT"),
        "boundary": [{"x": v.dxf.location.x, "y": v.dxf.location.y} for v in boundary[0].vertices]})
json.dump({"errors": len(audit.errors), "units": doc.header.get("$INSUNITS", 0), "pieces": pieces}, open(sys.argv[2], "w"), indent=0)
print(len(audit.errors), audit.errors, len(pieces), doc.dxfversion, doc.header.get("$INSUNITS"))
