import RestwaterCore

/// How wide a line of text is in the shell's own typeface: text, em, weight.
public struct Letters: Sendable {
    public let width: @Sendable (String, Double, Weight) -> Double
    public init(width: @escaping @Sendable (String, Double, Weight) -> Double) { self.width = width }

    /// Height of a line relative to its em; the core's layout uses the same value.
    static let line = 1.2
    /// Height of a capital letter or a digit in the app's typeface, as a share of the em.
    static let cap = 0.711
    /// A text is never made smaller than this share of the requested size.
    static let smallest = 0.25
    /// One step smaller: 14 steps halve a size, so that at 200 % text the size of 100 % is one of the steps.
    static let smaller = 0.951_695_153

    /// Baseline of a line with this upper edge: its capitals are centred in it.
    static func baseline(top: Double, em: Double) -> Double { top + em * (line + cap) / 2 }
}

/// A text broken into lines.
struct Fitted: Equatable {
    let lines: [String]
    let em: Double
    /// Whether all of it is visible without a broken word.
    let whole: Bool
    var height: Double { Double(lines.count) * em * Letters.line }
}

extension Letters {
    /// Breaks a text into lines at `em`, then smaller and smaller until all of it fits the place without a broken word.
    func fit(_ text: String, em asked: Double, width: Double, height: Double, weight: Weight = .medium, most: Int = 99) -> Fitted {
        var em = asked
        while true {
            let fitted = layOut(text, em: em, width: width, height: height, weight: weight, most: most)
            if fitted.whole || em <= asked * Self.smallest { return fitted }
            em *= Self.smaller
        }
    }

    /// The largest step from `em` down at which it fits; the smallest step if it never does.
    func largest(_ em: Double, _ fits: (Double) -> Bool) -> Double {
        var size = em
        while size > em * Self.smallest && !fits(size) { size *= Self.smaller }
        return size
    }

    /// Of the sizes up to `em`, the one at which texts are drawn largest: `share` is the available part of the height
    /// that they need. Larger letters need more lines, and a squeezed text is drawn smaller.
    func largestDrawn(_ em: Double, share: (Double) -> Double) -> Double {
        var (best, drawn) = (em, 0.0)
        var size = em
        while size >= em * Self.smallest {
            let there = size * min(1, share(size))
            if there > drawn * 1.001 { (best, drawn) = (size, there) }
            size *= Self.smaller
        }
        return best
    }

    /// Breaks a text into lines at that em, and cuts it off if it does not fit.
    func layOut(_ text: String, em: Double, width: Double, height: Double, weight: Weight = .medium, most: Int = 99) -> Fitted {
        let room = max(1, min(most, Int(height / (em * Self.line))))
        let (lines, unbroken) = wrap(text, em, width, weight, lines: room)
        let whole = unbroken && lines.count <= room && Double(lines.count) * em * Self.line <= height + 1
        return Fitted(lines: whole ? lines : cut(lines, to: room, em, width, weight), em: em, whole: whole)
    }

    /// Breaks a text into lines as full as possible; returns them with whether every word fitted. A single line is
    /// never broken.
    private func wrap(_ text: String, _ em: Double, _ most: Double, _ weight: Weight, lines room: Int) -> ([String], Bool) {
        if room == 1 && !text.contains("\n") { return ([text], width(text, em, weight) <= most) }
        var lines: [String] = []
        var unbroken = true
        for paragraph in text.paragraphs {
            var line = ""
            for word in paragraph {
                let longer = line.isEmpty ? word : line + " " + word
                if !line.isEmpty && width(longer, em, weight) > most {
                    lines.append(line)
                    line = word
                } else {
                    line = longer
                }
                if width(line, em, weight) > most { unbroken = false }
            }
            lines.append(line)
        }
        return (lines, unbroken)
    }

    /// As many lines as there is room for, each as long as possible; dots mark what is missing.
    private func cut(_ lines: [String], to room: Int, _ em: Double, _ most: Double, _ weight: Weight) -> [String] {
        var kept = Array(lines.prefix(room))
        if lines.count > room { kept[room - 1] += "…" }
        return kept.map { line in
            var short = line
            while short.count > 1 && width(short, em, weight) > most { short = short.dropLast(2) + "…" }
            return short
        }
    }

    /// One size for keys that belong together: the largest up to `em` at which every label fits its place.
    func common(_ labels: [(String, Rect)], em: Double, weight: Weight = .bold) -> Double {
        labels.filter { !$0.0.isBlank }
            .map { fit($0.0, em: em, width: $0.1.width, height: $0.1.height, weight: weight).em }.min() ?? em
    }

    /// Height of the whole text at that em and width.
    func height(_ text: String, em: Double, width: Double, weight: Weight = .medium) -> Double {
        text.isBlank ? 0 : Double(wrap(text, em, width, weight, lines: 99).0.count) * em * Self.line + 1
    }

    /// Splits a text at the end of the last line that fits the room, if that leaves at least two lines before it.
    func split(_ text: String, em: Double, width: Double, weight: Weight, room: Double) -> (String, String)? {
        let lines = wrap(text, em, width, weight, lines: 99).0
        let fit = Int(room / (em * Self.line))
        guard fit >= 2, fit < lines.count else { return nil }
        return (lines[..<fit].joined(separator: " "), lines[fit...].joined(separator: " "))
    }

    /// The number of lines a text takes at that em and width in letters of that weight: bold ones are wider.
    func lines(of text: String, em: Double, width: Double, weight: Weight = .medium) -> Int {
        text.isBlank ? 0 : wrap(text, em, width, weight, lines: 99).0.count
    }
}

extension String {
    var isBlank: Bool { allSatisfy(\.isWhitespace) }

    /// Its words in paragraphs. A figure and its unit, or what it counts, are one word, as the core binds them.
    fileprivate var paragraphs: [[String]] {
        var all: [[String]] = [[]]
        var word = ""
        // The core exchanges single letters, so what is drawn is the text itself.
        for (letter, bound) in zip(self, unbroken(text: self)) {
            guard bound == " " || bound == "\n" else {
                word.append(letter)
                continue
            }
            if !word.isEmpty { all[all.count - 1].append(word) }
            word = ""
            if bound == "\n" { all.append([]) }
        }
        if !word.isEmpty { all[all.count - 1].append(word) }
        return all
    }
}
