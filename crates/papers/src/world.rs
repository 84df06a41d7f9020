//! The world that typst lays a document out in: templates, fonts, and this document's own data.
//!
//! Nothing outside is seen: no disk, no network, no installed fonts, no clock. Templates are part
//! of the program. What differs from document to document comes in as `/data.json` and as figures
//! beside it; text is therefore data, never markup. Paths repeat from document to document, as
//! typst remembers each path for as long as the program runs.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

use crate::PaperError;

/// What every document shares.
struct Shop {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    templates: BTreeMap<&'static str, Source>,
}

const TEMPLATES: [(&str, &str); 8] = [
    ("/card.typ", include_str!("../templates/card.typ")),
    ("/frame.typ", include_str!("../templates/frame.typ")),
    ("/kinds.typ", include_str!("../templates/kinds.typ")),
    ("/look.typ", include_str!("../templates/look.typ")),
    ("/numbers.typ", include_str!("../templates/numbers.typ")),
    ("/sheet.typ", include_str!("../templates/sheet.typ")),
    ("/steps.typ", include_str!("../templates/steps.typ")),
    ("/working.typ", include_str!("../templates/working.typ")),
];

static SHOP: LazyLock<Shop> = LazyLock::new(|| {
    let files = typst_assets::fonts().map(Bytes::new);
    let fonts: Vec<Font> = files.flat_map(Font::iter).collect();
    let templates = TEMPLATES.iter().filter_map(|(path, text)| {
        Some((*path, Source::new(file_id(path).ok()?, (*text).to_owned())))
    });
    Shop {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        templates: templates.collect(),
        fonts,
    }
});

/// Reads the fonts and the templates, as the first document does otherwise.
pub fn make_ready() {
    LazyLock::force(&SHOP);
}

/// What a PDF says of itself.
pub(crate) struct Imprint {
    /// Names the document from one printing to the next.
    pub(crate) ident: String,
    /// Program and version.
    pub(crate) made_by: String,
    /// The day of the job, "2026-11-25"; the standard asks for one, and no clock is looked at.
    pub(crate) written: String,
}

/// The day of a job that names none.
const NO_DAY: &str = "1970-01-01";

/// One document on its way to paper.
pub(crate) struct Document {
    main: FileId,
    files: BTreeMap<String, Bytes>,
}

impl Document {
    /// A document that `template` lays out from `data`.
    pub(crate) fn new(template: &'static str, data: Vec<u8>) -> Result<Self, PaperError> {
        let files = BTreeMap::from([("/data.json".to_owned(), Bytes::new(data))]);
        Ok(Self { main: file_id(template)?, files })
    }

    /// Lays `text` beside the data as a file of its own.
    pub(crate) fn add(&mut self, path: String, text: String) {
        self.files.insert(path, Bytes::new(text.into_bytes()));
    }

    /// The document as PDF/A-2b, tagged.
    pub(crate) fn pdf(&self, imprint: &Imprint) -> Result<Vec<u8>, PaperError> {
        let pdf = self.print(imprint);
        typst::comemo::evict(10);
        pdf
    }

    fn print(&self, imprint: &Imprint) -> Result<Vec<u8>, PaperError> {
        let document: PagedDocument = typst::compile(self).output.map_err(|e| laid_out(&e))?;
        let options = PdfOptions {
            ident: Smart::Custom(imprint.ident.clone()),
            creator: Smart::Custom(Some(imprint.made_by.clone())),
            timestamp: day(&imprint.written).or_else(|| day(NO_DAY)),
            standards: PdfStandards::new(&[PdfStandard::A_2b])
                .map_err(|error| PaperError::Pdf(error.message().to_string()))?,
            ..PdfOptions::default()
        };
        typst_pdf::pdf(&document, &options).map_err(|errors| PaperError::Pdf(messages(&errors)))
    }
}

impl World for Document {
    fn library(&self) -> &LazyHash<Library> {
        &SHOP.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &SHOP.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let path = id.get().vpath().get_with_slash();
        SHOP.templates.get(path).cloned().ok_or_else(|| FileError::NotFound(path.into()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let path = id.get().vpath().get_with_slash();
        self.files.get(path).cloned().ok_or_else(|| FileError::NotFound(path.into()))
    }

    fn font(&self, index: usize) -> Option<Font> {
        SHOP.fonts.get(index).cloned()
    }

    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// True when some font here has a shape for it.
pub(crate) fn has_shape(c: char) -> bool {
    SHOP.fonts.iter().any(|font| font.info().coverage.contains(c.into()))
}

/// Midnight of a day that is written year, month, day; `None` for any other text.
fn day(written: &str) -> Option<Timestamp> {
    let mut parts = written.split('-');
    let mut next = || parts.next();
    let (year, month, day) = (next()?.parse().ok()?, next()?.parse().ok()?, next()?.parse().ok()?);
    let is_plain = parts.next().is_none() && (0..=9999).contains(&year);
    let midnight = Datetime::from_ymd_hms(year, month, day, 0, 0, 0);
    midnight.filter(|_| is_plain).map(Timestamp::new_utc)
}

fn file_id(path: &str) -> Result<FileId, PaperError> {
    let path = VirtualPath::new(path).map_err(|error| PaperError::Layout(format!("{error:?}")))?;
    Ok(FileId::new(RootedPath::new(VirtualRoot::Project, path)))
}

fn laid_out(errors: &[SourceDiagnostic]) -> PaperError {
    PaperError::Layout(messages(errors))
}

fn messages(errors: &[SourceDiagnostic]) -> String {
    errors.iter().map(|error| error.message.as_str()).collect::<Vec<_>>().join("; ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_read_or_refused() {
        for text in ["2026-11-25", "1970-01-01"] {
            assert!(day(text).is_some(), "{text}");
        }
        for text in [
            "",
            "Wed 25 Nov",
            "2026-13-01",
            "2026-11-31",
            "2026-11-25-1",
            "-2026-11-25",
            "99999-01-01",
        ] {
            assert!(day(text).is_none(), "{text}");
        }
    }

    #[test]
    fn every_template_is_known_and_nothing_else() {
        let sheet = Document::new("/card.typ", b"{}".to_vec()).unwrap();
        for (path, _) in TEMPLATES {
            assert!(sheet.source(file_id(path).unwrap()).is_ok(), "{path}");
        }
        assert!(sheet.source(file_id("/etc.typ").unwrap()).is_err());
        assert!(sheet.file(file_id("/etc/passwd").unwrap()).is_err());
        assert!(sheet.today(None).is_none());
    }
}
