//! The drawings of the card: which stand on the first page, at what size, with what words.
//!
//! A drawing keeps its own size in millimetres, as its scale is true only then. One that is larger
//! than the sheet is made smaller, and says so.

use figures::section::Detail;
use figures::{Figure, of_plan};
use job::plan::Plan;
use serde::Serialize;

use crate::{Paper, printable};

/// The drawings that a card can show; any may be lacking.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CardFigures {
    /// The coupling in half section; on the first page, beside the line-up when both are narrow.
    pub section: Option<Figure>,
    /// The line-up sheet; on the first page.
    pub lineup: Option<Figure>,
    /// The parts of the coupling moved apart, in the order of work.
    pub apart: Option<Figure>,
    /// Order and stages of tightening.
    pub tightening: Option<Figure>,
    /// Zones of bore and shaft with their readings, one a hub, each with its caption.
    pub fit: Vec<(String, Figure)>,
    /// Shape of each bore, much enlarged, each with its caption.
    pub bore_map: Vec<(String, Figure)>,
    /// Anything else: windows, pressure and torque of fits, curves of heat. Each with its caption.
    pub more: Vec<(String, Figure)>,
}

const APART: &str = "The parts, in the order in which they go on.";
const TIGHTENING: &str = "Tightening: order and stages.";

/// Print is this wide on either paper.
const WIDTH_MM: f64 = 184.0;
/// Kept free of a drawing's page for heading and caption.
const WORDS_MM: f64 = 24.0;
/// Between two drawings side by side.
const GUTTER_MM: f64 = 6.0;

impl CardFigures {
    /// All that a plan can show; what it does not hold yet is left out.
    pub fn of(plan: &Plan) -> Self {
        let ends = [("driver", &plan.head.driver), ("driven", &plan.head.driven)];
        let ends = ends.map(|(end, name)| (end, if name.is_empty() { end } else { name }));
        let fit = |(end, name): &(&str, &str)| {
            let drawn = of_plan::fit(plan, end, figures::Paper::CARD)?;
            Some((format!("Fit of the {name} hub: zones, and what was measured."), drawn))
        };
        let bore = |(end, name): &(&str, &str)| {
            let drawn = of_plan::bore_map(plan, end, figures::Paper::CARD)?;
            Some((format!("Shape of the bore of the {name} hub, much enlarged."), drawn))
        };
        let closing = |(end, name): &(&str, &str)| {
            let drawn = of_plan::clearance(plan, end, figures::Paper::CARD)?;
            Some((format!("Time in hand for the {name} hub: thick, the case to count on."), drawn))
        };
        let pulling = |(end, name): &(&str, &str)| {
            let drawn = of_plan::pull(plan, end, figures::Paper::CARD)?;
            Some((format!("Pull on the {name} hub while it is heated off."), drawn))
        };
        let feet = |(end, name): &(&str, &str)| {
            let drawn = of_plan::foot_map(plan, end, figures::Paper::CARD)?;
            Some((format!("Feet of the {name} from above, as their bolts were let go."), drawn))
        };
        let warmth = |(end, name): &(&str, &str)| {
            // Half the time in hand, and first touch.
            let drawn = of_plan::warmth_on(plan, end, figures::Paper::CARD);
            let few = drawn.into_iter().enumerate().filter(|(at, _)| [2, 4].contains(at));
            let caption = format!("Temperature of the {name} hub and its shaft.");
            few.map(|(_, figure)| (caption.clone(), figure)).collect::<Vec<_>>()
        };
        let holding = ends.iter().flat_map(|(end, name)| of_fit(plan, end, name));
        let curves = ends.iter().filter_map(closing).chain(ends.iter().filter_map(pulling));
        Self {
            section: of_plan::section(plan, Detail::Small),
            lineup: of_plan::lineup(plan, figures::Paper::CARD),
            apart: of_plan::taken_apart(plan),
            tightening: of_plan::tightening(plan, figures::Paper::CARD),
            fit: ends.iter().filter_map(fit).collect(),
            bore_map: ends.iter().filter_map(bore).collect(),
            more: borne(plan)
                .chain(sweeps(plan))
                .chain(ends.iter().filter_map(feet))
                .chain(holding)
                .chain(curves)
                .chain(ends.iter().flat_map(warmth))
                .collect(),
        }
    }

    /// Those of the first page; what they show is written in them.
    fn first(&self) -> impl Iterator<Item = (&Figure, &str)> {
        self.section.iter().chain(&self.lineup).map(|figure| (figure, ""))
    }

    /// Those of the pages that follow.
    fn later(&self) -> impl Iterator<Item = (&Figure, &str)> {
        let apart = self.apart.iter().map(|figure| (figure, APART));
        let hubs = self.fit.iter().chain(&self.bore_map).map(captioned);
        let tightening = self.tightening.iter().map(|figure| (figure, TIGHTENING));
        apart.chain(hubs).chain(tightening).chain(self.more.iter().map(captioned))
    }

    /// Every drawing as a file, in the order of the card.
    pub(crate) fn files(&self) -> impl Iterator<Item = (String, String)> {
        let all = self.first().chain(self.later()).enumerate();
        all.map(|(place, (figure, _))| (path(place), in_black(&figure.svg)))
    }
}

/// What the coupling bears, and how much of it is used up.
fn borne(plan: &Plan) -> impl Iterator<Item = (String, Figure)> {
    let budget = of_plan::budget(plan, figures::Paper::CARD)
        .map(|drawn| ("Misalignment used up, of what the sheet allows running.".to_owned(), drawn));
    let fitting = plan.drawings.bears.as_ref().is_some_and(|bears| bears.fitting.is_some());
    let at_once = "What it bears of angle and axial position at once";
    let at_once =
        if fitting { format!("{at_once}; broken: at fitting.") } else { format!("{at_once}.") };
    let envelope = of_plan::envelope(plan, figures::Paper::CARD).map(|drawn| (at_once, drawn));
    budget.into_iter().chain(envelope)
}

/// Every sweep of a dial, unrolled.
fn sweeps(plan: &Plan) -> impl Iterator<Item = (String, Figure)> + '_ {
    (0..plan.drawings.sweeps.len()).filter_map(|place| {
        let figure = of_plan::sweep(plan, place, figures::Paper::CARD)?;
        let name = &plan.drawings.sweeps[place].name;
        Some((
            format!("Sweep: {name}; the curve through it, and what each reading lies off."),
            figure,
        ))
    })
}

/// What would do at one end, what presses, what is held.
fn of_fit(plan: &Plan, end: &str, name: &str) -> Vec<(String, Figure)> {
    let paper = figures::Paper::CARD;
    let window = of_plan::window(plan, end, paper);
    let pressure = of_plan::pressure(plan, end, paper);
    let torque = of_plan::torque(plan, end, paper);
    let drawn = [
        (
            window,
            format!(
                "Interference that would do for the {name} hub; hatched: classes that lie in it."
            ),
        ),
        (pressure, format!("Contact pressure along the {name} hub.")),
        (torque, format!("Torque that holds the {name} hub, and what is needed.")),
    ];
    drawn.into_iter().filter_map(|(figure, caption)| Some((caption, figure?))).collect()
}

fn captioned((caption, figure): &(String, Figure)) -> (&Figure, &str) {
    (figure, caption)
}

fn path(place: usize) -> String {
    format!("/figure-{place}.svg")
}

/// Ink and pencil are one black in print, so that thin lines aren't broken up into dots; the
/// greys of second lines keep their order.
fn in_black(svg: &str) -> String {
    let mut svg = printable::printable(svg).into_owned();
    for (screen, print) in [
        ("#1c1a17", "#000000"),
        ("#5a2a8a", "#000000"),
        ("#544d42", "#333333"),
        ("#857a68", "#555555"),
        ("#d3c9b5", "#aaaaaa"),
    ] {
        svg = svg.replace(screen, print);
    }
    svg
}

/// The drawings, as rows of one or two.
#[derive(Serialize)]
pub(super) struct Drawings<'a> {
    first: Vec<Vec<Drawn<'a>>>,
    later: Vec<Vec<Drawn<'a>>>,
}

#[derive(Serialize)]
struct Drawn<'a> {
    path: String,
    says: &'a str,
    caption: &'a str,
    width_mm: f64,
    height_mm: f64,
    /// True when it had to be made smaller than it was drawn.
    reduced: bool,
}

impl<'a> Drawings<'a> {
    pub(super) fn new(figures: &'a CardFigures, paper: Paper) -> Self {
        let drawn = |(place, (figure, caption))| Drawn::new(place, figure, caption, paper);
        let count = figures.first().count();
        let later = figures.later().enumerate().map(|(place, one)| (place + count, one));
        Self { first: rows(figures.first().enumerate().map(drawn)), later: rows(later.map(drawn)) }
    }
}

impl<'a> Drawn<'a> {
    fn new(place: usize, figure: &'a Figure, caption: &'a str, paper: Paper) -> Self {
        let room = (WIDTH_MM / figure.width_mm)
            .min((paper.print_height_mm() - WORDS_MM) / figure.height_mm);
        let factor = room.min(1.0);
        Self {
            path: path(place),
            says: &figure.says,
            caption,
            width_mm: figure.width_mm * factor,
            height_mm: figure.height_mm * factor,
            reduced: factor < 1.0,
        }
    }
}

/// Neighbours stand side by side where the paper is wide enough.
fn rows<'a>(drawings: impl Iterator<Item = Drawn<'a>>) -> Vec<Vec<Drawn<'a>>> {
    let mut rows: Vec<Vec<Drawn<'a>>> = Vec::new();
    for drawn in drawings {
        match rows.last_mut() {
            Some(row)
                if row.len() == 1 && row[0].width_mm + GUTTER_MM + drawn.width_mm <= WIDTH_MM =>
            {
                row.push(drawn);
            }
            _ => rows.push(vec![drawn]),
        }
    }
    rows
}
