"""What another DXF library reads of a marker: its units, and each block as it is placed, entity by entity."""
import json, sys
try:
    import ezdxf
except ImportError:
    print("no ezdxf")
    sys.exit()
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
pieces = []
for ref in doc.modelspace().query("INSERT"):
    placed = list(ref.virtual_entities())
    boundary = [e for e in placed if e.dxftype() == "POLYLINE" and e.dxf.layer == "1"]
    assert len(boundary) == 1 and boundary[0].is_closed
    pieces.append({
        "texts": "; ".join(e.dxf.text for e in placed if e.dxftype() == "TEXT"),
        "layers": " ".join(sorted(e.dxf.layer + ":" + e.dxftype() for e in placed)),
        "boundary": [{"x": v.dxf.location.x, "y": v.dxf.location.y} for v in boundary[0].vertices],
        "holes": [{"vertices": [{"x": v.dxf.location.x, "y": v.dxf.location.y} for v in e.vertices]}
                  for e in placed if e.dxftype() == "POLYLINE" and e.dxf.layer == "11"]})
lines = [{"layer": e.dxf.layer, "closed": "yes" if e.is_closed else "no"} for e in doc.modelspace().query("POLYLINE")]
json.dump({"errors": len(audit.errors), "release": doc.dxfversion, "units": doc.header.get("$INSUNITS", 0),
           "layers": " ".join(layer.dxf.name for layer in doc.layers), "pieces": pieces, "lines": lines},
          open(sys.argv[2], "w"), indent=0)
