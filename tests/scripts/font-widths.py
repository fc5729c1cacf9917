"""Advance widths of two open fonts, in thousandths of an em, read from their 'hmtx' and 'cmap' tables (OpenType 1.9).

Writes tests/Acquisition.Reports.Tests/Plots/font-widths.csv, against which the extents that the plots reckon with are held.
Run with DejaVu Sans 2.37 and Liberation Sans 2.1 (metric compatible with the most usual sans serif faces), Python 3 alone.
"""
import pathlib
import struct

FONTS = {
    "DejaVu Sans": "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf",
    "Liberation Sans": "/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf",
}
RANGES = [(0x20, 0x7F), (0xA0, 0x180), (0x391, 0x3CA), (0x410, 0x450), (0x2010, 0x2027), (0x2070, 0x2090), (0x2190, 0x2194), (0x2200, 0x2266)]


def widths(path):
    data = pathlib.Path(path).read_bytes()
    tables = {}
    for i in range(struct.unpack(">H", data[4:6])[0]):
        tag, _, offset, length = struct.unpack(">4sIII", data[12 + 16 * i:28 + 16 * i])
        tables[tag.decode()] = offset
    per_em = struct.unpack(">H", data[tables["head"] + 18:tables["head"] + 20])[0]
    metrics = struct.unpack(">H", data[tables["hhea"] + 34:tables["hhea"] + 36])[0]
    advance = lambda glyph: struct.unpack(">H", data[tables["hmtx"] + 4 * min(glyph, metrics - 1):][:2])[0] * 1000 / per_em
    cmap = tables["cmap"]
    for i in range(struct.unpack(">H", data[cmap + 2:cmap + 4])[0]):
        platform, encoding, offset = struct.unpack(">HHI", data[cmap + 4 + 8 * i:cmap + 12 + 8 * i])
        at = cmap + offset
        if (platform, encoding) == (3, 1) and struct.unpack(">H", data[at:at + 2])[0] == 4:
            break
    count = struct.unpack(">H", data[at + 6:at + 8])[0] // 2
    read = lambda start: struct.unpack(f">{count}H", data[start:start + 2 * count])
    ends, starts, deltas, offsets = read(at + 14), read(at + 16 + 2 * count), read(at + 16 + 4 * count), read(at + 16 + 6 * count)
    found = {}
    for end, start, delta, shift, place in zip(ends, starts, deltas, offsets, range(count)):
        for code in range(start, end + 1):
            if shift == 0:
                glyph = (code + delta) & 0xFFFF
            else:
                where = at + 16 + 6 * count + 2 * place + shift + 2 * (code - start)
                glyph = struct.unpack(">H", data[where:where + 2])[0]
                glyph = (glyph + delta) & 0xFFFF if glyph else 0
            if glyph:
                found[code] = advance(glyph)
    return found


if __name__ == "__main__":
    tables = {name: widths(path) for name, path in FONTS.items()}
    out = pathlib.Path(__file__).parent.parent / "Acquisition.Reports.Tests" / "Plots" / "font-widths.csv"
    out.parent.mkdir(parents=True, exist_ok=True)
    with out.open("w", newline="\n") as file:
        file.write("code," + ",".join(FONTS) + "\n")
        for low, high in RANGES:
            for code in range(low, high):
                row = [tables[name].get(code) for name in FONTS]
                if any(row):
                    file.write(f"{code}," + ",".join("" if x is None else f"{x:.1f}" for x in row) + "\n")
