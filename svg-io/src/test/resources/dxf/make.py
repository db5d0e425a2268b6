"""Drawings made with another DXF library, and what it says of them."""
import json, math, sys
import ezdxf
from pathlib import Path
out = Path(sys.argv[1]); out.mkdir(exist_ok=True)
expected = []
def vertices(entity):
    """Points of an outline, its arcs and curves flattened by their own formulas."""
    kind = entity.dxftype()
    if kind in ("POLYLINE", "LWPOLYLINE"):
        points = []
        for part in entity.virtual_entities():
            if part.dxftype() == "LINE":
                points += [part.dxf.start, part.dxf.end]
            else:
                arc = list(part.flattening(2e-5))
                points += arc if not points or arc[0].distance(points[-1]) < 1e-6 else arc[::-1]
        if points[0].distance(points[1]) and points[1].distance(points[2]) > 1e-6:
            raise SystemExit("the parts of a polyline are not in order")
        return points
    return list(entity.flattening(2e-5, 64) if kind == "SPLINE" else entity.flattening(2e-5))
def measure(entity, scale=1.0):
    return measure_points(vertices(entity), scale)
def measure_points(points, scale):
    pts = [(p.x * scale, p.y * scale) for p in points]
    a = abs(sum(pts[i-1][0]*pts[i][1] - pts[i][0]*pts[i-1][1] for i in range(len(pts))) / 2)
    xs = [p[0] for p in pts]; ys = [p[1] for p in pts]
    return {"width_mm": round(max(xs)-min(xs), 4), "height_mm": round(max(ys)-min(ys), 4), "area_mm2": round(a, 3)}
def save(doc, name, pieces):
    doc.saveas(out/name); expected.append({"file": name, "pieces": pieces})
BULGED=[(0,0,0),(120,0,math.tan(math.pi/8)),(160,40,0),(160,100,-0.3),(60,130,1),(0,80,0)]
for version in ["R12","R2000","R2004","R2007","R2010","R2013","R2018"]:
    doc=ezdxf.new(version); msp=doc.modelspace()
    doc.header["$INSUNITS"]=4
    doc.layers.add("Größe M" if version!="R12" else "Groesse")
    if version=="R12":
        e=msp.add_polyline2d([(x,y) for x,y,_ in BULGED],close=True)
        for v,(x,y,b) in zip(e.vertices,BULGED): v.dxf.bulge=b
        layer="Groesse"
    else:
        e=msp.add_lwpolyline(BULGED,format="xyb",close=True); layer="Größe M"
    e.dxf.layer=layer
    save(doc,f"bulges-{version}.dxf",[dict(measure(e),name=layer)])
doc=ezdxf.new("R2010"); doc.header["$INSUNITS"]=1; msp=doc.modelspace()
es=[]
es.append((msp.add_ellipse((3,2),major_axis=(1.5,0.7),ratio=0.6),"oval"))
es.append((msp.add_circle((8,2),1.25),"disc"))
rs=msp.add_rational_spline([(20,0),(24,0),(24,4),(20,4),(20,0)],weights=[1,2,0.5,2,1],degree=3); es.append((rs,"rational"))
for e,n in es: doc.layers.add(n); e.dxf.layer=n
save(doc,"curves-in-inches.dxf",[dict(measure(e,25.4),name=n) for e,n in es])
# blocks, mirrored, turned, nested, scaled differently
doc=ezdxf.new("R2000"); doc.header["$INSUNITS"]=5; msp=doc.modelspace()
inner=doc.blocks.new("half",base_point=(1,1)); inner.add_lwpolyline([(1,1,0),(9,1,0.5),(9,6,0),(1,6,0)],format="xyb",close=True)
outer=doc.blocks.new("outer",base_point=(0,0)); outer.add_blockref("half",(2,3),dxfattribs={"rotation":30})
r1=msp.add_blockref("half",(10,10),dxfattribs={"xscale":2,"yscale":2,"rotation":90})
r2=msp.add_blockref("half",(50,10),dxfattribs={"xscale":-1,"yscale":1.5})
r3=msp.add_blockref("outer",(60,40),dxfattribs={"xscale":1,"yscale":2,"rotation":-15})
r4=msp.add_blockref("half",(30,50)); r4.dxf.extrusion=(0,0,-1)
pieces=[]
outline=vertices(inner[0])
for m in (r1.matrix44(), r2.matrix44(), outer[0].matrix44()*r3.matrix44(), r4.matrix44()):
    pieces.append(dict(measure_points(list(m.transform_vertices(outline)),10),name="half"))
save(doc,"blocks-in-centimetres.dxf",pieces)
json.dump({"cases":expected},open(out/"expected.json","w"),indent=1,ensure_ascii=False)
