//! Reads a PDF back with the programs of poppler-utils.

#![expect(clippy::unwrap_used, reason = "a test falls where its reader does")]

use std::io::Write;
use std::process::{Command, Stdio};

/// One PDF, in memory.
pub struct Reader(Vec<u8>);

/// One page as read back, in points.
pub struct Page {
    pub width: f64,
    pub height: f64,
    pub words: Vec<Word>,
}

/// One word and where it stands.
#[derive(Debug)]
pub struct Word {
    pub text: String,
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

/// `text` without any space: where lines are broken doesn't matter.
pub fn squeezed(text: &str) -> String {
    text.chars().filter(|c| !c.is_whitespace() && *c != '\u{200b}').collect()
}

impl Reader {
    /// `None`, said aloud, where the programs are missing; never so in the test run that counts.
    pub fn open(pdf: &[u8]) -> Option<Self> {
        if Command::new("pdftotext").arg("-v").stderr(Stdio::null()).status().is_ok() {
            return Some(Self(pdf.to_vec()));
        }
        let must = std::env::var("CI").is_ok_and(|ci| ci == "true");
        assert!(!must, "pdftotext (poppler-utils) is missing");
        eprintln!("SKIPPED: pdftotext (poppler-utils) is missing");
        None
    }

    /// All text in reading order, without spaces.
    pub fn text(&self) -> String {
        squeezed(&self.run("pdftotext", &["-raw", "-", "-"]))
    }

    /// What the PDF says of itself.
    pub fn info(&self) -> String {
        self.run("pdfinfo", &["-"])
    }

    /// Its tags.
    pub fn structure(&self) -> String {
        self.run("pdfinfo", &["-struct", "-"])
    }

    /// All pages as pixels of red, green and blue, with their headers.
    pub fn pixels(&self) -> Vec<u8> {
        let bytes = self.bytes(
            "pdftoppm",
            &["-r", "40", "-aa", "no", "-aaVector", "no", "-f", "1", "-l", "1", "-"],
        );
        // "P6\nwidth height\n255\n"
        let head = bytes
            .iter()
            .enumerate()
            .filter(|(_, b)| **b == b'\n')
            .nth(2)
            .map_or(0, |(at, _)| at + 1);
        bytes[head..].to_vec()
    }

    /// Page by page, word by word.
    pub fn pages(&self) -> Vec<Page> {
        let boxes = self.run("pdftotext", &["-bbox", "-", "-"]);
        let mut pages: Vec<Page> = Vec::new();
        for line in boxes.lines().map(str::trim) {
            if line.starts_with("<page ") {
                pages.push(Page {
                    width: number(line, "width"),
                    height: number(line, "height"),
                    words: vec![],
                });
            } else if let (true, Some(page)) = (line.starts_with("<word "), pages.last_mut()) {
                page.words.push(word(line));
            }
        }
        pages
    }

    fn run(&self, program: &str, arguments: &[&str]) -> String {
        String::from_utf8(self.bytes(program, arguments)).unwrap()
    }

    fn bytes(&self, program: &str, arguments: &[&str]) -> Vec<u8> {
        let mut command = Command::new(program);
        let command = command.args(arguments).stdin(Stdio::piped()).stdout(Stdio::piped());
        let mut child = command.spawn().unwrap();
        let mut input = child.stdin.take().unwrap();
        let pdf = self.0.clone();
        let feed = std::thread::spawn(move || input.write_all(&pdf));
        let output = child.wait_with_output().unwrap();
        let _ = feed.join().unwrap();
        assert!(output.status.success(), "{program} {arguments:?}");
        output.stdout
    }
}

impl Page {
    /// Its words without spaces.
    pub fn text(&self) -> String {
        self.words.iter().map(|word| word.text.as_str()).collect()
    }
}

fn word(line: &str) -> Word {
    let text = line
        .split_once('>')
        .and_then(|(_, rest)| rest.rsplit_once('<'))
        .map_or("", |(text, _)| text);
    Word {
        text: text
            .replace("&lt;", "<")
            .replace("&gt;", ">")
            .replace("&quot;", "\"")
            .replace("&amp;", "&"),
        left: number(line, "xMin"),
        top: number(line, "yMin"),
        right: number(line, "xMax"),
        bottom: number(line, "yMax"),
    }
}

fn number(line: &str, name: &str) -> f64 {
    let (_, rest) = line.split_once(&format!("{name}=\"")).unwrap();
    rest.split('"').next().unwrap().parse().unwrap()
}
