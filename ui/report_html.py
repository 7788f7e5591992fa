"""A report's layout as one HTML page that needs nothing else: inline SVG, no scripts, every text escaped."""

from __future__ import annotations

import base64
import unicodedata
from html import escape

from stillshaft.ui.report_layout import (
    Bitmap,
    Block,
    Disc,
    Facts,
    Layout,
    Picture,
    Pictures,
    Section,
    Shape,
    Signature,
    Table,
    Text,
    Words,
)
from stillshaft.ui.report_pdf import colour_of

_FAMILY = 'Inter, "Segoe UI", "Helvetica Neue", Arial, "Liberation Sans", "DejaVu Sans", sans-serif'
_STYLE = f"""
body {{ font: 15px/1.45 {_FAMILY}; color: {colour_of("text")}; background: {colour_of("panel")}; max-width: 60rem;
  margin: 2rem auto; padding: 0 1rem; font-variant-numeric: tabular-nums; }}
h1, h2, p, td, th, dd, dt {{ unicode-bidi: plaintext; overflow-wrap: anywhere; }}
h1 {{ font-size: 1.9rem; line-height: 1.2; margin: 0 0 0.3rem; }}
h2 {{ font-size: 1.25rem; color: {colour_of("accent")}; margin: 2rem 0 0.5rem; break-after: avoid; }}
p {{ margin: 0.4rem 0; white-space: pre-line; }}
.quiet {{ color: {colour_of("quiet")}; font-size: 0.88rem; }}
.strong, .lead {{ font-weight: 600; }}
.lead {{ font-size: 1.2rem; }}
.doubt {{ border-left: 4px solid {colour_of("bad")}; padding: 0.2rem 0.8rem; }}
.scroll {{ overflow-x: auto; }}
.scroll table {{ min-width: 38rem; }}
table {{ border-collapse: collapse; width: 100%; margin: 0.5rem 0 1rem; font-size: 0.88rem; }}
thead {{ display: table-header-group; }}
tr {{ break-inside: avoid; }}
th, td {{ border-bottom: 1px solid {colour_of("grid")}; padding: 0.25rem 0.5rem; text-align: left; vertical-align: top;
  white-space: pre-line; }}
th {{ color: {colour_of("quiet")}; border-bottom: 1.5px solid {colour_of("quiet")}; vertical-align: bottom; }}
.figures {{ text-align: right; }}
.band td {{ background: {colour_of("ground")}; }}
table.large td {{ font-size: 1.4rem; font-weight: 600; }}
table.large tr.band td, table.large small {{ font-size: 0.88rem; font-weight: 400; }}
dl {{ display: grid; grid-template-columns: minmax(7rem, 27%) 1fr; margin: 0.5rem 0 1rem; }}
dt, dd {{ margin: 0; padding: 0.2rem 0.5rem 0.2rem 0; border-bottom: 1px solid {colour_of("grid")}; white-space: pre-line; }}
dt {{ color: {colour_of("quiet")}; font-size: 0.88rem; }}
.signature {{ display: grid; grid-template-columns: 27% 60%; row-gap: 1.6rem; margin: 1.6rem 0; }}
.signature span:nth-child(even) {{ border-bottom: 1px solid {colour_of("text")}; }}
.pictures {{ display: flex; flex-wrap: wrap; gap: 0.5rem; }}
.pictures svg {{ max-width: 100%; height: auto; }}
footer {{ margin-top: 2rem; border-top: 1px solid {colour_of("line")}; padding-top: 0.5rem; }}
@page {{ margin: 15mm; }}
@media print {{ body {{ margin: 0; max-width: none; background: none; }} .new-page {{ break-before: page; }}
  svg {{ break-inside: avoid; }} .scroll {{ overflow: visible; }} }}
"""
_SCALE = 1.35  # pixels of the screen for a point of the picture


def html(layout: Layout) -> str:
    """The whole page."""
    return f"""<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{_safe(layout.title)}</title><style>{_STYLE}</style></head><body>
<h1>{_safe(layout.title)}</h1>
<p class="quiet">{_safe(layout.subtitle)}</p>
{"".join(_section(section) for section in layout.sections)}
<footer class="quiet">{_safe(layout.footer)}</footer>
</body></html>
"""


def _safe(text: str) -> str:
    """The text escaped; what HTML cannot hold becomes a replacement character."""
    kept = "".join(c if c in "\n\t" or unicodedata.category(c) not in ("Cc", "Cs") else "\ufffd" for c in text)
    return escape(kept)


def _section(section: Section) -> str:
    begin = ' class="new-page"' if section.new_page else ""
    return f"<section{begin}><h2>{_safe(section.title)}</h2>\n{''.join(_block(b) for b in section.blocks)}</section>\n"


def _block(block: Block) -> str:
    match block:
        case Text():
            return f'<p class="{block.style}">{_safe(block.text)}</p>\n'
        case Facts():
            return f"<dl>{''.join(f'<dt>{_safe(n)}</dt><dd>{_safe(said)}</dd>' for n, said in block.rows)}</dl>\n"
        case Table():
            return _table(block)
        case Pictures():
            return f'<div class="pictures">{"".join(_picture(p) for p in block.pictures)}</div>\n'
        case Signature():
            lines = "".join(f'<span class="quiet">{_safe(line)}</span><span></span>' for line in block.lines)
            return f'<div class="signature">{lines}</div>\n'


def _table(block: Table) -> str:
    kinds = [' class="figures"' if c.figures else "" for c in block.columns]
    head = "".join(f"<th{k}>{_safe(c.title)}</th>" for k, c in zip(kinds, block.columns, strict=True))
    rows = []
    for row in block.rows:
        if row.band:
            title, *more = row.cells
            said = "\n".join([f"<strong>{_safe(title)}</strong>", *(_safe(m) for m in more)])
            rows.append(f'<tr class="band"><td colspan="{len(kinds)}">{said}</td></tr>')
        else:
            cells = zip(kinds, row.cells, strict=True)
            rows.append("<tr>" + "".join(f"<td{k}>{_cell(c, block.large)}</td>" for k, c in cells) + "</tr>")
    large = ' class="large"' if block.large else ""
    body = "\n".join(rows)
    return f'<div class="scroll"><table{large}><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table></div>\n'


def _cell(text: str, large: bool) -> str:
    """A cell; in a large table its first line is large, the rest of it is not."""
    first, *rest = text.split("\n", 1)
    return f"{_safe(first)}\n<small>{_safe(rest[0])}</small>" if large and rest else _safe(text)


def _picture(picture: Picture) -> str:
    width, height = (f"{_SCALE * size:.0f}" for size in (picture.width, picture.height))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {picture.width:g} {picture.height:g}" width="{width}" '
        f'height="{height}" role="img" aria-label="{_safe(picture.alt)}">'
        f"{_bitmap(picture.bitmap)}{''.join(_shape(s) for s in picture.shapes)}</svg>\n"
    )


def _bitmap(bitmap: Bitmap | None) -> str:
    if bitmap is None:
        return ""
    data = base64.b64encode(bitmap.jpeg).decode()
    return (
        f'<image x="{bitmap.x:.1f}" y="{bitmap.y:.1f}" width="{bitmap.width:.1f}" height="{bitmap.height:.1f}" '
        f'href="data:image/jpeg;base64,{data}"/>'
    )


def _shape(shape: Shape) -> str:
    if isinstance(shape, Words):
        weight = ' font-weight="600"' if shape.strong else ""
        anchor = "" if shape.anchor == "start" else f' text-anchor="{shape.anchor}"'
        return (
            f'<text x="{shape.x:.1f}" y="{shape.y:.1f}" font-size="{shape.size:g}" fill="{colour_of(shape.colour)}"'
            f"{anchor}{weight}>{_safe(shape.text)}</text>"
        )
    thin = 0.0 if isinstance(shape, Disc) else shape.thin
    look = f'fill="{"none" if shape.fill is None else colour_of(shape.fill, thin)}"'
    if shape.colour is not None:
        look += f' stroke="{colour_of(shape.colour)}" stroke-width="{shape.width:g}"'
    if shape.dash:
        look += f' stroke-dasharray="{" ".join(f"{d:g}" for d in shape.dash)}"'
    if isinstance(shape, Disc):
        return f'<circle cx="{shape.x:.1f}" cy="{shape.y:.1f}" r="{shape.radius:.1f}" {look}/>'
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in shape.points)
    return f'<{"polygon" if shape.closed else "polyline"} points="{points}" stroke-linejoin="round" {look}/>'
