import RestwaterCore

@testable import RestwaterKit

/// A sheet as SVG, for inspection: `RESTWATER_PICTURES=DIR ./dev test swift` writes those of the demo day.
struct Svg {
    let ink: Ink

    func picture(_ sheet: Sheet, _ measure: GlassMeasure) -> String {
        let pieces = sheet.pieces.map { piece in
            let place = piece.place
            let field = piece.field.map { field in
                "<text x='\(field.box.left)' y='\(field.box.bottom * 0.7)' font-size='\(field.em)'>\(escaped(field.value))</text>"
            }
            return "<g transform='translate(\(place.left) \(place.top))'>\(piece.marks.map(mark).joined())\(field ?? "")</g>"
        }
        return """
            <svg xmlns='http://www.w3.org/2000/svg' width='\(measure.width)' height='\(measure.height)' font-family='Liberation Sans, Helvetica, Arial, sans-serif'>
            <rect width='100%' height='100%' fill='\(hex(.paper))'/>
            \(pieces.joined(separator: "\n"))
            </svg>
            """
    }

    private func mark(_ mark: Mark) -> String {
        switch mark {
        case .fill(let outline, let tint): return "<path d='\(path(outline))' fill='\(hex(tint))'/>"
        case .line(let outline, let tint, let stroke):
            let dashes = stroke.dashes.isEmpty ? "" : " stroke-dasharray='\(stroke.dashes.map(\.description).joined(separator: " "))'"
            let cap = stroke.round ? " stroke-linecap='round'" : ""
            return "<path d='\(path(outline))' fill='none' stroke='\(hex(tint))' stroke-width='\(stroke.width)'\(dashes)\(cap)/>"
        case .text(let letter):
            return
                "<text x='\(letter.at.x)' y='\(letter.at.y)' font-family='\(letter.cut)' font-size='\(letter.em)' fill='\(hex(letter.tint))'"
                + (letter.weight == .bold ? " font-weight='bold'" : "") + ">\(escaped(letter.text))</text>"
        case .inside(let outline, let marks):
            let id = "c\(abs(path(outline).hashValue))"
            return "<clipPath id='\(id)'><path d='\(path(outline))'/></clipPath><g clip-path='url(#\(id))'>\(marks.map(self.mark).joined())</g>"
        }
    }

    private func path(_ outline: Outline) -> String {
        outline.parts.map { part -> String in
            switch part {
            case .move(let at): return "M\(at.x) \(at.y)"
            case .line(let at): return "L\(at.x) \(at.y)"
            case .close: return "Z"
            case .rect(let r, let c):
                let (x, y, w, h) = (r.left, r.top, r.width, r.height)
                guard c > 0 else { return "M\(x) \(y)h\(w)v\(h)h\(-w)Z" }
                return "M\(x + c) \(y)h\(w - 2 * c)a\(c) \(c) 0 0 1 \(c) \(c)v\(h - 2 * c)a\(c) \(c) 0 0 1 \(-c) \(c)"
                    + "h\(2 * c - w)a\(c) \(c) 0 0 1 \(-c) \(-c)v\(2 * c - h)a\(c) \(c) 0 0 1 \(c) \(-c)Z"
            case .circle(let at, let r): return "M\(at.x - r) \(at.y)a\(r) \(r) 0 1 0 \(2 * r) 0a\(r) \(r) 0 1 0 \(-2 * r) 0Z"
            case .leftHalf(let at, let r): return "M\(at.x) \(at.y - r)a\(r) \(r) 0 0 0 0 \(2 * r)Z"
            }
        }.joined()
    }

    private func hex(_ tint: Tint) -> String {
        let text = String(ink.rgb(tint), radix: 16)
        return "#" + String(repeating: "0", count: 6 - text.count) + text
    }

    private func escaped(_ text: String) -> String {
        text.replacing("&", with: "&amp;").replacing("<", with: "&lt;")
    }
}
