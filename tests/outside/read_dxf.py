"""Reads DXF files with ezdxf and prints what it found as JSON, a line for each file.

    python3 tests/outside/read_dxf.py FILE...

audit errors, version, units, layers (declared and used), and for every entity its layer; for polylines also whether
they are closed, repeated vertices, the radius of every arc and the area by the bulge formula. Lines of templates carry the
name of their line type and the points they run through, arcs flattened by ezdxf itself.
"""

import gc
import json
import math
import sys

import ezdxf
from ezdxf import path as paths


def arcs_and_area(points, closed):
    """Radii from bulges: chord (1 + b^2) / (4 |b|); area: shoelace plus r^2 (t - sin t) / 2 for every arc, t = 4 atan b."""
    radii, area, repeated = [], 0.0, 0
    runs = list(zip(points, points[1:] + points[:1])) if closed else list(zip(points, points[1:]))
    for (x0, y0, bulge), (x1, y1, _) in runs:
        chord = math.hypot(x1 - x0, y1 - y0)
        if chord < 1e-9:
            repeated += 1
            continue
        area += (x0 * y1 - x1 * y0) / 2
        if bulge:
            radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
            turn = 4 * math.atan(bulge)
            radii.append(radius)
            area += radius * radius * (turn - math.sin(turn)) / 2
    return radii, area, repeated


def describe(entity):
    kind = entity.dxftype()
    seen = {"type": kind, "layer": entity.dxf.layer, "linetype": entity.dxf.get("linetype", "BYLAYER")}
    if kind in ("LWPOLYLINE", "CIRCLE", "LINE"):
        seen["run"] = [[p.x, p.y] for p in paths.make_path(entity).flattening(0.01)]
    if kind == "LWPOLYLINE":
        points = list(entity.get_points("xyb"))
        radii, area, repeated = arcs_and_area(points, entity.closed)
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        seen.update(
            closed=bool(entity.closed),
            vertices=len(points),
            repeated=repeated,
            radii=radii,
            area=area,
            corners=[min(xs), min(ys), max(xs), max(ys)],
        )
    elif kind == "CIRCLE":
        seen.update(center=list(entity.dxf.center)[:2], radius=entity.dxf.radius)
    elif kind == "LINE":
        seen.update(start=list(entity.dxf.start)[:2], end=list(entity.dxf.end)[:2])
    elif kind == "TEXT":
        seen.update(
            text=entity.dxf.text,
            height=entity.dxf.height,
            at=list(entity.dxf.insert)[:2],
            rotation=entity.dxf.get("rotation", 0),
        )
    elif kind == "3DFACE":
        seen.update(corners=[list(v) for v in (entity.dxf.vtx0, entity.dxf.vtx1, entity.dxf.vtx2)])
    return seen


def main(path):
    drawing = ezdxf.readfile(path)
    audit = drawing.audit()
    entities = [describe(entity) for entity in drawing.modelspace()]
    # one string written at once: written piece by piece it takes several times as long
    read = json.dumps(
        {
            "version": drawing.dxfversion,
            "errors": [[error.code, error.message] for error in audit.errors],
            "fixes": [[fix.code, fix.message] for fix in audit.fixes],
            "insunits": drawing.header.get("$INSUNITS"),
            "measurement": drawing.header.get("$MEASUREMENT"),
            "linetypes": {t.dxf.name: [tag.value for tag in t.pattern_tags.tags if tag.code == 49] for t in drawing.linetypes},
            "layers": sorted(layer.dxf.name for layer in drawing.layers),
            "used": sorted({entity["layer"] for entity in entities}),
            "entities": entities,
        }
    )
    print(read)


if __name__ == "__main__":
    # nothing read is let go before the end
    gc.disable()
    for path in sys.argv[1:]:
        main(path)
