//! The drawings of a plan in a page.

use figures::section::Detail;
use figures::{Figure, Paper, of_plan};
use job::Stage;
use job::plan::Plan;
use maud::{Markup, PreEscaped, html};

/// A drawing for a column beside the entries, and the same one drawn anew for a phone.
pub(crate) struct Drawing {
    wide: Figure,
    narrow: Figure,
    caption: String,
}

impl Drawing {
    fn on(draw: impl Fn(Paper) -> Option<Figure>, caption: impl Into<String>) -> Option<Self> {
        let caption = caption.into();
        Some(Self { wide: draw(Paper::COLUMN)?, narrow: draw(Paper::PHONE)?, caption })
    }
}

const ENDS: [&str; 2] = ["driver", "driven"];

/// The drawings of a stage; none where none helps the hand to decide.
pub(crate) fn of_stage(plan: &Plan, stage: Stage) -> Vec<Drawing> {
    match stage {
        Stage::Coupling => {
            section(plan).into_iter().chain(budget(plan)).chain(envelope(plan)).collect()
        }
        Stage::Gap => section(plan).into_iter().collect(),
        Stage::Sizes => {
            ENDS.iter().flat_map(|end| [fit(plan, end), bores(plan, end)]).flatten().collect()
        }
        Stage::Fit => ENDS
            .iter()
            .flat_map(|end| {
                [fit(plan, end), window(plan, end), torque(plan, end), pressure(plan, end)]
            })
            .flatten()
            .collect(),
        Stage::Lineup => {
            let feet = ENDS.iter().filter_map(|end| foot_map(plan, end));
            lineup(plan).into_iter().chain(sweeps(plan)).chain(feet).collect()
        }
        Stage::Closeup => tightening(plan).into_iter().collect(),
        Stage::Heat => ENDS.iter().filter_map(|end| closing(plan, end)).collect(),
        Stage::Removal => ENDS.iter().filter_map(|end| pulling(plan, end)).collect(),
        Stage::Machines | Stage::Running => Vec::new(),
    }
}

fn budget(plan: &Plan) -> Option<Drawing> {
    let caption = "How much of the misalignment that the sheet allows running is used up, and by \
                   what; the thick upright is all of it.";
    Drawing::on(|paper| of_plan::budget(plan, paper), caption)
}

fn envelope(plan: &Plan) -> Option<Drawing> {
    let caption = "Hatched: what it bears of angle and axial position at once; broken line: what \
                   the sheet allows at fitting. The more of one, the less is left of the other; \
                   axial counts from the position that it was made for.";
    Drawing::on(|paper| of_plan::envelope(plan, paper), caption)
}

fn foot_map(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = "From above, the 3 o’clock side down the page: how far each foot rose as its bolt \
                   was let go. A thick rim rose more than it may.";
    Drawing::on(|paper| of_plan::foot_map(plan, end, paper), caption)
}

/// Drawings of one thing at several moments, in order.
pub(crate) struct Moments {
    /// What they are called together: stays the same from answer to answer.
    key: String,
    moments: Vec<Drawing>,
}

/// The moments of a stage, hub by hub; only where the flow of heat was worked out.
pub(crate) fn moments_of_stage(plan: &Plan, stage: Stage) -> Vec<Moments> {
    let drawn = |end: &str, draw: &dyn Fn(Paper) -> Vec<Figure>| {
        let pairs = draw(Paper::COLUMN).into_iter().zip(draw(Paper::PHONE));
        let caption =
            || format!("{}: lines of one temperature, cut through the middle.", hub(plan, end));
        let moments = pairs.map(|(wide, narrow)| Drawing { wide, narrow, caption: caption() });
        Moments { key: format!("{}-{end}", stage.key()), moments: moments.collect() }
    };
    let all = ENDS.map(|end| match stage {
        Stage::Heat => drawn(end, &|paper| of_plan::warmth_on(plan, end, paper)),
        Stage::Removal => drawn(end, &|paper| of_plan::warmth_off(plan, end, paper)),
        _ => Moments { key: String::new(), moments: Vec::new() },
    });
    all.into_iter().filter(|moments| !moments.moments.is_empty()).collect()
}

/// All moments one under the other; with the script, one at a time under a slider.
pub(crate) fn show_moments(moments: &Moments) -> Markup {
    let last = moments.moments.len() - 1;
    html! {
        div.moments id={ "m-" (moments.key) } data-moments {
            label hidden { span { "Moment" }
                input type="range" min="0" max=(last) value=(last.min(2)) step="1"; }
            @for drawing in &moments.moments {
                div data-says=(drawing.wide.says) { (show(drawing)) }
            }
        }
    }
}

/// The coupling as this job knows it, small.
pub(crate) fn section(plan: &Plan) -> Option<Drawing> {
    let figure = of_plan::section(plan, Detail::Small)?;
    let caption = "Drawn to scale. Above the centre line it is cut open; broken lines rest on \
                   sizes that nobody gave.";
    Some(Drawing { narrow: figure.clone(), wide: figure, caption: caption.to_owned() })
}

/// The coupling with every part lettered and named, for a page of its own.
pub(crate) fn whole_section(plan: &Plan) -> Option<Figure> {
    of_plan::section(plan, Detail::Full)
}

/// What of the sizes does not fit, where that is why nothing is drawn.
pub(crate) fn refused(plan: &Plan) -> Option<String> {
    of_plan::section_refused(plan)
}

/// Its parts moved apart, for the same page.
pub(crate) fn taken_apart(plan: &Plan) -> Option<Figure> {
    of_plan::taken_apart(plan)
}

/// "Motor hub": the hub at one end.
fn hub(plan: &Plan, end: &str) -> String {
    let name = if end == "driver" { &plan.head.driver } else { &plan.head.driven };
    let mut letters = name.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{} hub", letters.as_str())
}

fn bores(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: form of the bore at each station, from the end. Marks are the readings; the line \
         between them is a guess.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::bore_map(plan, end, paper), caption)
}

fn fit(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}. Hatched: what the class allows. Round marks along the key, square ones across; \
         whiskers are the ±.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::fit(plan, end, paper), caption)
}

fn closing(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: how it closes on its shaft. The thick line grabs first and is the one to count on; \
         the broken one is likely.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::clearance(plan, end, paper), caption)
}

/// The same for a hub that is only tried.
pub(crate) fn tried(closing: &job::plan::drawings::Closing) -> Option<Drawing> {
    let caption = "Tried, not entered. The thick line grabs first and is the one to count on; the \
                   broken one is likely.";
    Drawing::on(|paper| of_plan::closing(closing, paper), caption)
}

fn pulling(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: the pull that it needs while it is heated off, likely. The mark is heat going off; \
         in the box it is open.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::pull(plan, end, paper), caption)
}

fn window(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: the interference that holds by friction alone, is borne, and goes on. Hatched: \
         classes that lie whole in it.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::window(plan, end, paper), caption)
}

fn torque(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: torque that friction holds, from the least for sure to the most (hatched), and what \
         is needed.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::torque(plan, end, paper), caption)
}

fn pressure(plan: &Plan, end: &str) -> Option<Drawing> {
    let caption = format!(
        "{}: mean pressure of each slice. At the very ends of the hub it has no bound in theory, \
         and none is given.",
        hub(plan, end)
    );
    Drawing::on(|paper| of_plan::pressure(plan, end, paper), caption)
}

fn lineup(plan: &Plan) -> Option<Drawing> {
    let caption = "The move at each foot stands at its arrow.";
    Drawing::on(|paper| of_plan::lineup(plan, paper), caption)
}

fn sweeps(plan: &Plan) -> impl Iterator<Item = Drawing> + '_ {
    let caption = "Round the clock as seen from the driver; a stem pushed in reads more. Below, \
                   enlarged: what each reading lies off the curve; broken, the ± of one reading.";
    let each = move |place| Drawing::on(|paper| of_plan::sweep(plan, place, paper), caption);
    (0..plan.drawings.sweeps.len()).filter_map(each)
}

fn tightening(plan: &Plan) -> Option<Drawing> {
    Drawing::on(|paper| of_plan::tightening(plan, paper), "")
}

/// A drawing in a page. `figures` escapes every word that it sets.
pub(crate) fn show(drawing: &Drawing) -> Markup {
    let twice = drawing.wide != drawing.narrow;
    html! {
        figure.drawing {
            div.wide[twice] { (PreEscaped(&drawing.wide.svg)) }
            @if twice { div.narrow { (PreEscaped(&drawing.narrow.svg)) } }
            @if !drawing.caption.is_empty() { figcaption { (drawing.caption) } }
        }
    }
}

/// A drawing as wide as the page; on a narrow one it is moved under the eye.
pub(crate) fn show_whole(figure: &Figure) -> Markup {
    html! {
        figure.drawing.whole tabindex="0" role="group" aria-label="Drawing of the coupling" {
            (PreEscaped(&figure.svg))
        }
    }
}
