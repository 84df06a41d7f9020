//! What goes in new, what never goes back, set screws, and the last look before the start.

use couplings::kind::Each;
use quantities::Kind;

use super::super::Context;
use super::super::stage_builder::{SHEET, StageBuilder};

pub(super) fn numbers(cx: &Context, out: &mut StageBuilder) {
    let Some((kind, form)) = cx.kind.zip(cx.form) else { return };
    setscrews(cx, out);
    let sealing: Vec<String> = kind
        .parts(form)
        .into_iter()
        .filter(|part| matches!(part.letter, 'F' | 'G'))
        .map(|part| format!("{} ({}): {}", part.name, part.letter, how_many(part.each)))
        .collect();
    if !sealing.is_empty() {
        out.note(format!("Seals and gaskets of this form: {}.", sealing.join(", ")));
    }
    for part in kind.never_again(form) {
        out.note(format!("Never used again: {part}."));
    }
    out.note(
        "Before the start: one full turn by hand, free and without a rub, tools and rags counted \
         out; then the guard, clear of every turning part. Local rules say what it must cover and \
         who lets the locks off.",
    );
}

fn how_many(each: Each) -> String {
    each.count(None, 1).map_or_else(|| each.says().to_owned(), |count| count.to_string())
}

fn setscrews(cx: &Context, out: &mut StageBuilder) {
    let screws = &cx.file.coupling.sheet.setscrew;
    let size = screws.size.as_deref().map_or_else(String::new, |size| format!(", {size}"));
    if let Some(torque) = &screws.torque {
        let label = format!("Set screws of the hubs{size}");
        out.number("setscrew", label, torque.shown_as(Kind::Torque))
            .second("the one over the key first; from the sheet")
            .written(SHEET);
    } else if screws.count.is_some() || screws.size.is_some() {
        out.missing("coupling.sheet.setscrew.torque", "torque of the set screws, from the sheet");
    }
}
