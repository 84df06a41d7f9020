//! Style sheet, script and fonts: in the program, under names that change with their content.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::LazyLock;

use axum::extract::Path;
use axum::http::header::{CACHE_CONTROL, CONTENT_TYPE};
use axum::response::IntoResponse;

use crate::PageError;

const SCRIPT: &str = include_str!("part.js");
const SHEET: &str = include_str!("style.css");

/// The faces: the name in the style sheet, the media type, the name in the font file by which it is
/// found.
const FACES: [(&str, &str, &str); 4] = [
    ("print.otf", "font/otf", "LibertinusSerif-Regular"),
    ("print-strong.otf", "font/otf", "LibertinusSerif-Semibold"),
    ("print-slanted.otf", "font/otf", "LibertinusSerif-Italic"),
    ("entry.ttf", "font/ttf", "DejaVuSansMono"),
];

/// One file, under a name with a mark of its content.
pub(crate) struct Asset {
    name: String,
    kind: &'static str,
    bytes: &'static [u8],
}

impl Asset {
    fn new(name: &str, kind: &'static str, bytes: &'static [u8]) -> Self {
        let mut hasher = DefaultHasher::new();
        bytes.hash(&mut hasher);
        Self { name: format!("{:016x}-{name}", hasher.finish()), kind, bytes }
    }

    /// Where it is fetched.
    pub fn address(&self) -> String {
        format!("/assets/{}", self.name)
    }
}

static FONTS: LazyLock<Vec<Asset>> = LazyLock::new(|| {
    let face = |&(name, kind, face): &(&str, &'static str, &str)| {
        Some(Asset::new(name, kind, font(face)?))
    };
    FACES.iter().filter_map(face).collect()
});

/// The style sheet, with the addresses of the fonts put in.
pub(crate) static STYLE: LazyLock<Asset> = LazyLock::new(|| {
    let mut sheet = format!("{SHEET}\n{}", figures::SHEET);
    for font in FONTS.iter() {
        let plain = font.name.split_once('-').map_or("", |(_, plain)| plain);
        sheet = sheet.replace(&format!("url({plain})"), &format!("url({})", font.address()));
    }
    Asset::new("style.css", "text/css; charset=utf-8", sheet.leak().as_bytes())
});

pub(crate) static PART: LazyLock<Asset> =
    LazyLock::new(|| Asset::new("part.js", "text/javascript; charset=utf-8", SCRIPT.as_bytes()));

pub(crate) async fn show(Path(name): Path<String>) -> Result<impl IntoResponse, PageError> {
    let all = [&*STYLE, &*PART].into_iter().chain(FONTS.iter());
    let asset = all.into_iter().find(|asset| asset.name == name).ok_or(PageError::NoPage)?;
    let headers =
        [(CONTENT_TYPE, asset.kind), (CACHE_CONTROL, "public, max-age=31536000, immutable")];
    Ok((headers, asset.bytes))
}

/// The font whose own name table says that it is this face and no other of its family.
fn font(face: &str) -> Option<&'static [u8]> {
    typst_assets::fonts().find(|font| postscript_name(font).as_deref() == Some(face))
}

/// Name 6 in the name table of an OpenType font (ISO/IEC 14496-22), Windows platform, UTF-16.
fn postscript_name(font: &[u8]) -> Option<String> {
    let number =
        |at: usize| Some(usize::from(u16::from_be_bytes([*font.get(at)?, *font.get(at + 1)?])));
    let long = |at: usize| Some((number(at)? << 16) | number(at + 2)?);
    let tables = 0..number(4)?;
    let record =
        tables.map(|table| 12 + 16 * table).find(|&at| font.get(at..at + 4) == Some(b"name"))?;
    let table = long(record + 8)?;
    let words = table + number(table + 4)?;
    let names = (0..number(table + 2)?).map(|name| table + 6 + 12 * name);
    let mut wanted = names.filter(|&at| number(at) == Some(3) && number(at + 6) == Some(6));
    let at = wanted.next()?;
    let (length, start) = (number(at + 8)?, words + number(at + 10)?);
    let units = font
        .get(start..start + length)?
        .chunks_exact(2)
        .map(|pair| u16::from_be_bytes([pair[0], pair[1]]));
    String::from_utf16(&units.collect::<Vec<_>>()).ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_four_faces_are_in_the_program_and_in_the_sheet() {
        assert_eq!(FONTS.len(), FACES.len());
        let sheet = std::str::from_utf8(STYLE.bytes).unwrap();
        for font in FONTS.iter() {
            assert!(sheet.contains(&font.address()), "{}", font.name);
        }
        assert!(!sheet.contains("http"), "the sheet asks another site");
    }
}
