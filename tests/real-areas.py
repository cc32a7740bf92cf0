"""Areas and lengths of a plan by other programs: shapely (GEOS) for the plane, ezdxf for the drawing itself.

Reads one plan as JSON on standard input and prints what it finds as JSON; knows nothing of how the plan was made.
Debian packages python3-shapely and python3-ezdxf.
"""
import json
import sys
from math import atan, atan2, ceil, cos, hypot, pi, sin

import ezdxf
from ezdxf.path import make_path
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

SAG = 1e-6  # chords leave their arcs by this at most


def line_of(path):
    points, bulges = path["points"], path["bulges"]
    line = [tuple(points[0])]
    for k, bulge in enumerate(bulges):
        (ax, ay), (bx, by) = points[k], points[(k + 1) % len(points)]
        if abs(bulge) > 1e-9:
            sweep, chord = 4 * atan(bulge), hypot(bx - ax, by - ay)
            radius = chord * (1 + bulge * bulge) / (4 * abs(bulge))
            rise = (1 - bulge * bulge) / (4 * bulge)
            cx, cy = (ax + bx) / 2 - (by - ay) * rise, (ay + by) / 2 + (bx - ax) * rise
            start = atan2(ay - cy, ax - cx)
            count = max(2, ceil(abs(sweep) / (2 * (2 * SAG / radius) ** 0.5)))
            line += [
                (cx + radius * cos(start + sweep * i / count), cy + radius * sin(start + sweep * i / count))
                for i in range(1, count)
            ]
        line.append((bx, by))
    return line


def polygon_of(polygon):
    return Polygon(polygon["outer"], polygon["holes"])


def stub(wall, node):
    """The first piece of a wall out of a node, turned to start there; None when it does not end there."""
    line = wall["line"]
    for way in (line, line[::-1]):
        if hypot(way[0][0] - node[0], way[0][1] - node[1]) < 1e-6:
            return way[:2]
    return None


def corners(walls):
    """Where walls end at one point: what a mitre adds between neighbours that open by more than a straight angle."""
    nodes = {tuple(round(c, 6) for c in end) for wall in walls for end in (wall["line"][0], wall["line"][-1])}
    for node in nodes:
        arms = [(way, wall["thickness"]) for wall in walls if (way := stub(wall, node))]
        # A wall that goes on through the node leaves it both ways.
        for wall in walls:
            line = LineString(wall["line"])
            along = line.project(Point(node))
            if 1e-6 < along < line.length - 1e-6 and line.distance(Point(node)) < 1e-3:
                for way in (-1e-3, 1e-3):
                    there = line.interpolate(along + way)
                    arms.append(([node, (there.x, there.y)], wall["thickness"]))
        arms.sort(key=lambda arm: atan2(arm[0][1][1] - node[1], arm[0][1][0] - node[0]))
        for k, (a, thick) in enumerate(arms):
            b, other = arms[(k + 1) % len(arms)]
            turn = (atan2(b[1][1] - node[1], b[1][0] - node[0]) - atan2(a[1][1] - node[1], a[1][0] - node[0])) % (2 * pi)
            if len(arms) > 1 and turn > pi + 1e-6 and abs(thick - other) < 1e-9:
                yield LineString([a[1], node, b[1]]).buffer(thick / 2, cap_style=2, join_style=2, mitre_limit=3)


def footprint(walls):
    strips = [
        LineString(wall["line"]).buffer(wall["thickness"] / 2, cap_style=2, join_style=2, mitre_limit=3) for wall in walls
    ]
    return unary_union(strips + list(corners(walls)))


def drawing(path, layers, metres):
    """The lines of the layers in metres, arcs within a millimetre of them."""
    return [
        [(p.x * metres, p.y * metres) for p in make_path(entity).flattening(0.001)]
        for entity in ezdxf.readfile(path).modelspace()
        if entity.dxf.layer in layers and entity.dxftype() in ("LINE", "LWPOLYLINE", "POLYLINE", "ARC")
    ]


def material(lines, faces, thickness):
    """What the drawing shows as wall: within its faces, or half a thickness to each side of its lines."""
    if faces:
        return unary_union([Polygon(line) for line in lines])
    return unary_union([LineString(line).buffer(thickness / 2, cap_style=2, join_style=2) for line in lines])


def pieces(region):
    return sorted((part.area for part in getattr(region, "geoms", [region]) if part.area > 1e-6), reverse=True)


plan = json.load(sys.stdin)
for wall in plan["walls"]:
    wall["line"] = line_of(wall)
sections = [unary_union([polygon_of(each) for each in body]) for body in plan["bodies"]]
ours = unary_union(sections)
ribbons = [
    unary_union([LineString(line_of(bead)).buffer(bead["width"] / 2, resolution=256) for bead in beads])
    for beads in plan["beads"]
]
lines = drawing(plan["file"], plan["layers"], plan["metres"])
shown = material(lines, plan["faces"], plan["walls"][0]["thickness"])
print(
    json.dumps(
        {
            "length": sum(LineString(wall["line"]).length for wall in plan["walls"]),
            "footprint": footprint(plan["walls"]).area,
            "sections": [body.area for body in sections],
            "shared": sum(a.intersection(b).area for i, a in enumerate(sections) for b in sections[:i]),
            "covered": [ribbon.area for ribbon in ribbons],
            "proud": [ribbon.difference(body.buffer(5e-4, join_style=2)).area for ribbon, body in zip(ribbons, sections)],
            "drawnLines": len(lines),
            "drawnLength": unary_union([LineString(line) for line in lines]).length,
            "added": pieces(ours.difference(shown.buffer(plan["within"], join_style=2))),
            "lost": pieces(shown.difference(ours.buffer(plan["within"], join_style=2))),
        }
    )
)
