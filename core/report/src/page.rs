//! HTML and SVG by hand: everything from the log is escaped, nothing is fetched.

use std::fmt::Write as _;

/// Black on white; nothing is shown by colour alone.
const STYLE: &str = "
@page { size: A4; margin: 14mm; }
body { font: 10pt/1.4 Georgia, 'Times New Roman', serif; color: #1d2327; background: #fff; max-width: 182mm; margin: 0 auto; }
h1 { font-size: 17pt; margin: 0 0 1mm; } h2 { font-size: 12pt; margin: 5mm 0 1mm; }
p { margin: 1mm 0; } p.read { font-size: 8.5pt; }
dl { display: flex; flex-wrap: wrap; gap: 2mm 7mm; margin: 3mm 0; } dt { font-size: 8.5pt; } dd { margin: 0; font-size: 13pt; }
figure { margin: 0; break-inside: avoid; } svg { width: 100%; height: auto; }
svg text { font: 11px Georgia, 'Times New Roman', serif; fill: #1d2327; }
table { border-collapse: collapse; width: 100%; font-size: 7.5pt; line-height: 1.25; }
th, td { text-align: left; padding: 0.3mm 1.5mm 0.3mm 0; border-bottom: 0.2mm solid #c9c5bb; vertical-align: top; }
thead { display: table-header-group; } tr { break-inside: avoid; }
ul { margin: 1mm 0; padding-left: 5mm; } .foot { font-size: 8pt; margin-top: 4mm; }
";

/// A page under construction.
pub(super) struct Page {
    html: String,
    pictures: usize,
}

impl Page {
    pub fn begin(title: &str, language: &str) -> Self {
        let (title, language) = (escape(title), escape(language));
        let html = format!(
            "<!DOCTYPE html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
             <title>{title}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n<h1>{title}</h1>\n"
        );
        Self { html, pictures: 0 }
    }

    pub fn heading(&mut self, text: &str) {
        let _ = writeln!(self.html, "<h2>{}</h2>", escape(text));
    }

    pub fn paragraph(&mut self, text: &str) {
        let _ = writeln!(self.html, "<p>{}</p>", escape(text));
    }

    pub fn fine_print(&mut self, text: &str) {
        let _ = writeln!(self.html, "<p class=\"read\">{}</p>", escape(text));
    }

    pub fn figures(&mut self, figures: &[(String, String)]) {
        self.html.push_str("<dl>\n");
        for (name, value) in figures {
            let _ = writeln!(self.html, "<div><dt>{}</dt><dd>{}</dd></div>", escape(name), escape(value));
        }
        self.html.push_str("</dl>\n");
    }

    /// A picture with its name and its alternative text.
    pub fn picture(&mut self, width: u32, height: u32, name: &str, alternative: &str, drawing: &Drawing) {
        self.pictures += 1;
        let n = self.pictures;
        let _ = writeln!(
            self.html,
            "<figure><svg viewBox=\"0 0 {width} {height}\" role=\"img\" aria-labelledby=\"t{n} d{n}\">\n\
             <title id=\"t{n}\">{}</title>\n<desc id=\"d{n}\">{}</desc>\n{}</svg></figure>",
            escape(name),
            escape(alternative),
            drawing.svg
        );
    }

    pub fn table(&mut self, head: &[String], rows: &[Vec<String>]) {
        let cells = |tag: &str, row: &[String]| {
            row.iter().fold(String::new(), |mut line, cell| {
                let _ = write!(line, "<{tag}>{}</{tag}>", escape(cell));
                line
            })
        };
        let _ = writeln!(self.html, "<table>\n<thead><tr>{}</tr></thead>\n<tbody>", cells("th", head));
        for row in rows {
            let _ = writeln!(self.html, "<tr>{}</tr>", cells("td", row));
        }
        self.html.push_str("</tbody>\n</table>\n");
    }

    pub fn list(&mut self, items: &[String]) {
        self.html.push_str("<ul>\n");
        for item in items {
            let _ = writeln!(self.html, "<li>{}</li>", escape(item));
        }
        self.html.push_str("</ul>\n");
    }

    pub fn end(mut self) -> String {
        self.html.push_str("</body>\n</html>\n");
        self.html
    }
}

/// The inside of a picture, in px.
#[derive(Default)]
pub(super) struct Drawing {
    svg: String,
}

impl Drawing {
    pub fn line(&mut self, (x1, y1): (f64, f64), (x2, y2): (f64, f64), width: f64) {
        let _ = writeln!(
            self.svg,
            "<line x1=\"{x1:.1}\" y1=\"{y1:.1}\" x2=\"{x2:.1}\" y2=\"{y2:.1}\" stroke=\"#1d2327\" stroke-width=\"{width}\"/>"
        );
    }

    pub fn path(&mut self, points: &[(f64, f64)], fill: &str, stroke_width: f64) {
        let mut d = String::new();
        for (i, (x, y)) in points.iter().enumerate() {
            let _ = write!(d, "{}{x:.1} {y:.1}", if i == 0 { "M" } else { " L" });
        }
        let stroke = if stroke_width > 0.0 { "#1d2327" } else { "none" };
        let _ = writeln!(
            self.svg,
            "<path d=\"{d}\" fill=\"{fill}\" stroke=\"{stroke}\" stroke-width=\"{stroke_width}\"/>"
        );
    }

    /// A bite: a filled diamond, as on the screens.
    pub fn diamond(&mut self, (x, y): (f64, f64)) {
        self.path(&[(x - 5.0, y), (x, y - 5.0), (x + 5.0, y), (x, y + 5.0), (x - 5.0, y)], "#1d2327", 0.5);
    }

    /// A wait without a bite: an upright stroke, as on the screens.
    pub fn stroke(&mut self, (x, y): (f64, f64)) {
        self.line((x, y - 5.0), (x, y + 5.0), 2.0);
    }

    /// A cast: a filled dot, as on the screens.
    pub fn dot(&mut self, (x, y): (f64, f64)) {
        let _ = writeln!(self.svg, "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"3\" fill=\"#1d2327\"/>");
    }

    /// Text that begins, is centred or ends at a place (SVG's `text-anchor`).
    pub fn text(&mut self, (x, y): (f64, f64), anchor: &str, text: &str) {
        let _ = writeln!(
            self.svg,
            "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{}</text>",
            escape(text)
        );
    }
}

/// Text as HTML; characters that are not allowed in HTML or XML are left out.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\t' => out.push(' '),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// A round step that divides a span into at most this many parts.
pub(super) fn step(span: f64, parts: f64) -> f64 {
    let mut step = 1.0;
    for factor in [2.0, 2.5, 2.0].iter().cycle().take(30) {
        if span / step <= parts {
            break;
        }
        step *= factor;
    }
    step
}

/// Text from the log, cut to this many characters.
pub(super) fn cut(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    text.chars().take(most - 1).chain(['…']).collect()
}
