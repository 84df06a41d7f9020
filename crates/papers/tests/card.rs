//! The card as it comes out of the printer: read back with the tools of a general PDF library.

mod reader;
mod sample;

use job::plan::{Caution, KitItem, Missing, Piece, Plan, Step};
use job::{Job, JobFile, SheetFile, Stage};
use papers::{CardFigures, Paper, PaperError, card};
use quantities::{System, Verdict};
use reader::{Reader, squeezed};

const MADE_BY: &str = "Hubwright 0.1.0";

fn printed(plan: &Plan, paper: Paper) -> Vec<u8> {
    card(plan, &sample::figures(), paper, MADE_BY).expect("a card")
}

#[track_caller]
fn says(text: &str, wanted: &str) {
    assert!(text.contains(&squeezed(wanted)), "“{wanted}” is not in: {text}");
}

#[test]
fn everything_a_plan_says_is_on_the_card() {
    let plan = sample::plan();
    let Some(read) = Reader::open(&printed(&plan, Paper::A4)) else { return };
    let text = read.text();
    let head = &plan.head;
    for words in [&head.title, &head.works, &head.coupling, &head.runs_at, &head.written, &head.by]
    {
        says(&text, words);
    }
    says(&text, "Job card 41");
    says(&text, "works (invented)");
    for order in plan.cautions.iter().flat_map(|caution| &caution.orders) {
        says(&text, order);
    }
    for step in plan.on.iter().chain(&plan.off) {
        for piece in &step.title {
            says(&text, piece.text());
        }
        says(&text, step.hold.as_deref().unwrap_or_default());
        step.needs.iter().for_each(|need| says(&text, need));
    }
    for item in &plan.kit {
        says(&text, &item.what);
    }
    for missing in plan.missing() {
        says(&text, &missing.what);
    }
    for note in plan.stages.iter().flat_map(|stage| &stage.notes) {
        says(&text, note);
    }
}

/// A maker's sheet tells every figure that it has, and names every one that it has not.
#[test]
fn a_sheet_on_paper_tells_and_asks_every_figure() {
    let mut file = SheetFile { name: "a gear coupling".to_owned(), ..SheetFile::default() };
    file.sheet.rated_torque = Some("4300 N·m".parse().unwrap());
    let pdf = papers::sheet(&file, Paper::A4, MADE_BY).expect("a sheet");
    let Some(read) = Reader::open(&pdf) else { return };
    let text = read.text();
    says(&text, "a gear coupling");
    says(&text, "4300 N·m");
    says(&text, "Not on the sheet");
    for line in job::sheet_lines(&file.sheet) {
        says(&text, line.what.trim_end_matches('.'));
    }
}

#[test]
fn every_number_has_its_unit_limit_verdict_and_working() {
    for system in [System::Metric, System::Inch] {
        let mut plan = sample::plan();
        plan.head.system = system;
        let Some(read) = Reader::open(&printed(&plan, Paper::usual(system))) else { return };
        let text = read.text();
        for number in plan.numbers() {
            says(&text, &number.label);
            says(&text, &number.settle);
            says(&text, number.verdict.map_or("", Verdict::words));
            let Some(value) = number.value else { continue };
            let spread = value.plus_minus_digits(system).map(|digits| format!("± {digits} "));
            let unit = format!("{}{}", spread.unwrap_or_default(), value.unit(system));
            says(&text, &value.digits(system));
            says(&text, &unit);
            says(&text, &number.limits.map_or(String::new(), |limits| limits.show(&value, system)));
        }
        for working in plan.numbers().filter_map(|number| number.working.as_ref()) {
            says(&text, &working.name);
            working.formula.lines().for_each(|line| says(&text, line));
            says(&text, &working.put_in(system));
            says(&text, &working.source.to_string());
            says(&text, working.valid);
            for term in &working.terms {
                says(&text, &term.name);
                says(&text, &term.value.show(system));
            }
        }
    }
}

#[test]
fn the_first_caution_stands_before_all_but_the_head() {
    let plan = sample::plan();
    let Some(read) = Reader::open(&printed(&plan, Paper::A4)) else { return };
    let text = read.text();
    let place = |words: &str| text.find(&squeezed(words)).unwrap_or_else(|| panic!("{words}"));
    assert!(place(&plan.head.title) < place("Lock and prove dead"));
    assert!(place("Lock and prove dead") < place(&plan.on[0].title_text()));
    let heated = text.rfind(&squeezed("Sleeve, seal and end ring")).unwrap();
    assert!(place("Burns: gloves") < heated, "a stage’s caution stands before its step in full");
}

#[test]
fn pages_are_counted_and_as_large_as_the_paper() {
    for (paper, size) in [(Paper::A4, [595.28, 841.89]), (Paper::Letter, [612.0, 792.0])] {
        let Some(read) = Reader::open(&printed(&sample::plan(), paper)) else { return };
        let pages = read.pages();
        assert!((4..=8).contains(&pages.len()), "{} pages", pages.len());
        for (place, page) in pages.iter().enumerate() {
            assert!((page.width - size[0]).abs() < 0.01 && (page.height - size[1]).abs() < 0.01);
            says(&page.text(), &format!("page {} of {}", place + 1, pages.len()));
            says(&page.text(), MADE_BY);
        }
        says(&pages[0].text(), &format!("Working: page {}", pages.len()));
    }
}

#[test]
fn the_pdf_is_tagged_archival_and_of_this_program() {
    let pdf = printed(&sample::plan(), Paper::A4);
    let plain = String::from_utf8_lossy(&pdf);
    assert!(plain.contains("<pdfaid:part>2</pdfaid:part>"), "PDF/A-2");
    assert!(plain.contains("<pdfaid:conformance>B</pdfaid:conformance>"), "level b");
    let Some(read) = Reader::open(&pdf) else { return };
    let info = read.info();
    assert!(info.contains("Tagged:          yes"), "{info}");
    assert!(info.contains("Job card 41: Sea-water pump 2"), "{info}");
    assert!(info.contains(MADE_BY), "{info}");
    assert!(info.contains("2026"), "the day of the job: {info}");
}

#[test]
fn print_is_black_and_grey() {
    let Some(read) = Reader::open(&printed(&sample::plan(), Paper::A4)) else { return };
    let pixels = read.pixels();
    assert!(pixels.len() > 10_000);
    let coloured = pixels.chunks_exact(3).filter(|p| p[0] != p[1] || p[1] != p[2]).count();
    assert_eq!(coloured, 0, "pixels with a colour");
}

#[test]
fn the_same_plan_gives_the_same_bytes() {
    let plan = sample::plan();
    let first = printed(&plan, Paper::A4);
    let other = printed(&sample::bare(), Paper::Letter);
    assert_ne!(first, other);
    assert!(first == printed(&plan, Paper::A4), "bytes differ");
}

/// Text is data: nothing that somebody types is read as markup.
#[test]
fn letters_of_markup_come_through_unharmed() {
    const ODD: &str = r#"#pump *2* $x$ _a_ @b <c> \n "d" `e` [f] = g // h /* i ~ -- ... 'j' {k}"#;
    let mut plan = sample::plan();
    plan.head.title = ODD.into();
    plan.head.number = "#41".into();
    plan.cautions[0].orders[0] = ODD.into();
    plan.on[1].title =
        vec![Piece::Words(ODD.into()), Piece::Number(ODD.into()), Piece::Missing(ODD.into())];
    plan.stages[2].notes[0] = ODD.into();
    plan.kit = vec![KitItem { what: ODD.into(), why: ODD.into() }];
    plan.stages[2].missing = vec![Missing { place: String::new(), what: ODD.into() }];
    plan.stages[3].numbers[0].label = ODD.into();
    let Some(read) = Reader::open(&printed(&plan, Paper::A4)) else { return };
    let found = read.text().matches(&squeezed(ODD)).count();
    assert!(found >= 11, "{found} of 11 places");
    says(&read.text(), "Job card #41");
}

/// Letters that no font here has, and those that steer only, must not stop a job from printing.
#[test]
fn any_letter_prints() {
    let mut plan = sample::plan();
    plan.head.title = "泵 2 🔧 \u{202e}x\u{0}\u{e000}\u{fe0f}\tÅ Насос".into();
    let mut figures = sample::figures();
    figures.section = Some(sample::figure(88.0, 60.0, "泵 🔧"));
    let odd = figures.section.as_mut().unwrap();
    odd.svg = odd.svg.replace("sample figure", "泵 🔧 figure");
    let pdf = card(&plan, &figures, Paper::A4, "泵").unwrap();
    let Some(read) = Reader::open(&pdf) else { return };
    says(&read.text(), "□ 2 □ x□ Å Насос");
}

#[test]
fn a_job_with_nearly_nothing_in_it_is_one_page() {
    let plan = sample::bare();
    let pdf = card(&plan, &CardFigures::default(), Paper::A4, MADE_BY).unwrap();
    let Some(read) = Reader::open(&pdf) else { return };
    let text = read.text();
    assert_eq!(read.pages().len(), 1);
    says(&text, "Fan 3");
    for absent in [
        "Steps",
        "Numbers",
        "Still to measure",
        "Bring",
        "Drawings",
        "Where each stage",
        "comes off",
        "Working",
        "FIRST",
        "CAUTION",
    ] {
        assert!(!text.contains(&squeezed(absent)), "{absent} without content");
    }
}

/// Twenty-six steps, long titles, a word without end: all within the print of every page.
#[test]
fn long_jobs_stay_on_the_paper() {
    let mut plan = sample::plan();
    plan.head.title = "Circulating pump of the second evaporator, north side, with the long spacer that was made in the shop".into();
    plan.head.works = "W".repeat(90);
    plan.head.coupling =
        "gear coupling with flanged sleeves, limited end float, two new hubs".into();
    let long = |place: usize| {
        let title = "Bring the hub up to its stop with one smooth push, hold it home, look at the mark and say so aloud before anybody lets go of it [0.35 mm]";
        Step { id: format!("on.{place}"), ..sample::step(Stage::Heat, "", title) }
    };
    plan.on.extend((0..14).map(long));
    plan.on[3].detail = vec![Piece::Words("x".repeat(400))];
    plan.stages[3].numbers[0].label =
        "Interference where the shaft of the driven machine is thickest, second station".into();
    plan.stages[3].numbers[0].settle = "y".repeat(200);
    plan.cautions.push(Caution { stage: None, orders: vec!["z".repeat(200)] });
    for paper in [Paper::A4, Paper::Letter] {
        let Some(read) = Reader::open(&printed(&plan, paper)) else { return };
        let pages = read.pages();
        assert!(pages.len() <= 14, "{} pages", pages.len());
        for (place, page) in pages.iter().enumerate() {
            for word in &page.words {
                let inside = word.left >= 34.0
                    && word.right <= page.width - 34.0
                    && word.top >= 20.0
                    && word.bottom <= page.height - 20.0;
                assert!(inside, "page {}: {word:?}", place + 1);
            }
        }
    }
}

/// A scale is true only at full size; where the paper is too small the card says so.
#[test]
fn a_drawing_that_is_too_large_is_said_to_be_made_smaller() {
    let says_so = |width: f64, height: f64| {
        let figures = CardFigures {
            section: Some(sample::figure(width, height, "large")),
            ..CardFigures::default()
        };
        let pdf = card(&sample::bare(), &figures, Paper::Letter, MADE_BY).unwrap();
        Reader::open(&pdf).map(|read| read.text().contains(&squeezed("Made smaller to fit")))
    };
    for (width, height, smaller) in
        [(184.0, 100.0, false), (190.0, 100.0, true), (100.0, 300.0, true)]
    {
        let Some(said) = says_so(width, height) else { return };
        assert_eq!(said, smaller, "{width} × {height}");
    }
}

#[test]
fn drawings_keep_their_size_and_their_words() {
    let pdf = printed(&sample::plan(), Paper::A4);
    let Some(read) = Reader::open(&pdf) else { return };
    let pages = read.pages();
    // The two words of the first two drawings start 4 mm from their left edges, which lie 95 mm
    // apart: 184 mm of print in two columns with 6 mm between them.
    let starts: Vec<f64> =
        pages[0].words.iter().filter(|w| w.text == "sample").map(|w| w.left).collect();
    assert_eq!(starts.len(), 2);
    let apart = (starts[1] - starts[0]).abs() / 72.0 * 25.4;
    assert!((apart - 95.0).abs() < 0.1, "{apart} mm");
    let structure = read.structure();
    assert!(structure.matches("Figure").count() >= 7, "{structure}");
    assert!(structure.contains("Table") && structure.contains("H1"), "{structure}");
}

#[test]
fn a_figure_that_is_no_drawing_is_an_error() {
    let mut figures = sample::figures();
    figures.section.as_mut().unwrap().svg = "not a drawing".into();
    let error = card(&sample::plan(), &figures, Paper::A4, MADE_BY).unwrap_err();
    assert!(matches!(error, PaperError::Layout(_)), "{error}");
}

/// The jobs that come with the program, and one without a single entry, in one system or the other.
#[test]
fn jobs_from_files_print() {
    let files = [
        include_str!("../../../demo/boiler-feed-pump.toml"),
        include_str!("../../../demo/drum-line-shaft.toml"),
        include_str!("../../../demo/drying-belt.toml"),
        include_str!("../../../demo/sea-water-pump.toml"),
    ];
    let files = files.map(|text| job::read(text).unwrap());
    let systems = [System::Metric, System::Inch].into_iter().cycle();
    for (file, system) in files.iter().chain([&JobFile::default()]).zip(systems) {
        let plan = job::plan::plan(&Job::from_file(file), system);
        let pdf = card(&plan, &CardFigures::of(&plan), Paper::usual(system), MADE_BY).unwrap();
        let Some(read) = Reader::open(&pdf) else { return };
        let text = read.text();
        for step in plan.on.iter().chain(&plan.off) {
            step.title.iter().for_each(|piece| says(&text, piece.text()));
        }
        for number in plan.numbers() {
            says(&text, &number.label);
            says(&text, &number.value.map_or(String::new(), |value| value.digits(system)));
        }
        // What a hand needs is soon leafed through; the rest grows with the numbers of the job.
        let pages = read.pages();
        let record = pages.iter().position(|page| page.text().contains("Therecord"));
        let (hand, all) = (1 + record.unwrap(), pages.len());
        assert!(hand <= 7, "{}: {hand} pages for the hand", plan.head.title);
        let numbers = plan.numbers().count();
        assert!(all <= 8 + numbers / 10, "{}: {numbers} numbers, {all} pages", plan.head.title);
    }
}
