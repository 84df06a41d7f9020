//! A plan as plain text, 96 columns wide at most, readable without colour.

use job::Stage;
use job::plan::{KindRow, Number, Piece, Plan, StagePlan, Step};
use quantities::{System, Verdict, Working};

const WIDTH: usize = 96;

/// Where the figures of numbers end, and their limits begin.
const FIGURES: usize = 58;

/// The plan; with the working of every number when it is asked for.
pub fn plan(plan: &Plan, working: bool) -> String {
    let mut out = Page(String::new());
    head(&mut out, plan);
    for stage in &plan.stages {
        stage_part(&mut out, stage, plan.head.system, working);
        cautions(&mut out, plan, Some(stage.stage));
    }
    about(&mut out, plan);
    choice(&mut out, plan);
    ways(&mut out, plan);
    dues(&mut out, plan);
    steps(&mut out, "Putting it on", &plan.on);
    steps(&mut out, "Taking it off", &plan.off);
    out.section("To bring", "");
    for item in &plan.kit {
        out.row(&format!("  {}", item.what), &item.why);
    }
    out.0
}

struct Page(String);

impl Page {
    fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }

    /// Left and right on one line, or on two when they do not fit.
    fn row(&mut self, left: &str, right: &str) {
        let (l, r) = (left.chars().count(), right.chars().count());
        if l + r + 2 <= WIDTH {
            self.line(&format!("{left}{}{right}", " ".repeat(WIDTH - l - r)));
        } else {
            self.wrapped(left, left.len() - left.trim_start().len());
            self.wrapped(right, 6);
        }
    }

    fn section(&mut self, title: &str, right: &str) {
        self.line("");
        self.row(title, right);
        self.line(&"─".repeat(WIDTH));
    }

    fn wrapped(&mut self, text: &str, indent: usize) {
        let mut line = " ".repeat(indent);
        for word in text.split_whitespace() {
            if line.chars().count() + word.chars().count() + 1 > WIDTH && line.trim() != "" {
                self.line(&line);
                line = " ".repeat(indent);
            }
            if line.len() > indent {
                line.push(' ');
            }
            line.push_str(word);
        }
        if line.trim() != "" {
            self.line(&line);
        }
    }
}

fn head(out: &mut Page, plan: &Plan) {
    let head = &plan.head;
    let number =
        if head.number.is_empty() { String::new() } else { format!("Job {}  ", head.number) };
    out.row(&format!("{number}{}", head.title), plan.verdict().map_or("", Verdict::words));
    out.line(&"═".repeat(WIDTH));
    let works =
        if head.invented { format!("{} (invented)", head.works) } else { head.works.clone() };
    let parts = [&head.coupling, &head.runs_at, &works, &head.written, &head.by];
    let parts: Vec<&str> =
        parts.into_iter().map(String::as_str).filter(|p| !p.is_empty()).collect();
    out.wrapped(&parts.join("  ·  "), 0);
    cautions(out, plan, None);
    if plan.missing().next().is_some() {
        out.section("Still to measure", "place in the job");
        for missing in plan.missing() {
            out.row(&format!("  {}", missing.what), &missing.place);
        }
    }
}

/// What can hurt somebody: before everything, or at one stage.
fn cautions(out: &mut Page, plan: &Plan, stage: Option<Stage>) {
    for caution in plan.cautions.iter().filter(|caution| caution.stage == stage) {
        out.line("");
        out.line("CAUTION");
        for order in &caution.orders {
            out.wrapped(order, 2);
        }
    }
}

/// The parts by the letters of the drawing, and what may be found of them.
fn about(out: &mut Page, plan: &Plan) {
    let Some(about) = &plan.about else { return };
    out.section(&format!("Parts of a {}, {}", about.title.to_lowercase(), about.form), "");
    for part in &about.parts {
        out.row(&format!("  {}  {}", part.letter, part.name), &part.how_many);
    }
    out.section("What may be found when it is opened", "");
    for fault in &about.faults {
        let mark = if fault.ticked { "[x]" } else { "[ ]" };
        out.wrapped(&format!("{mark} {} ({})", fault.seen, fault.id), 2);
    }
}

/// What speaks for and against each kind on this drive; nothing where nothing does.
fn choice(out: &mut Page, plan: &Plan) {
    let speaks = |row: &&KindRow| !row.pros.is_empty() || !row.cons.is_empty();
    if !plan.choice.kinds.iter().any(|row| speaks(&row)) {
        return;
    }
    out.section("All kinds, for this drive", "");
    for row in plan.choice.kinds.iter().filter(speaks) {
        let chosen = if row.chosen { "chosen" } else { "" };
        out.row(&format!("  {}", row.title), chosen);
        for pro in &row.pros {
            out.wrapped(&format!("for it: {pro}"), 6);
        }
        for con in &row.cons {
            out.wrapped(&format!("against it: {con}"), 6);
        }
    }
}

fn stage_part(out: &mut Page, stage: &StagePlan, system: System, working: bool) {
    out.section(stage.stage.title(), stage.verdict().map_or("", Verdict::words));
    out.wrapped(&stage.summary, 2);
    for number in &stage.numbers {
        number_lines(out, number, system);
        if working && let Some(working) = &number.working {
            working_lines(out, working, system);
        }
    }
    for note in &stage.notes {
        out.wrapped(note, 2);
    }
}

fn number_lines(out: &mut Page, number: &Number, system: System) {
    let shown = number.value.map_or_else(|| "—".to_owned(), |value| value.show(system));
    let limits = match (&number.limits, &number.value) {
        (Some(limits), Some(value)) => limits.show(value, system),
        _ => String::new(),
    };
    let word = number.verdict.map_or("", Verdict::words);
    let judged = format!(" {limits:<19} {word}");
    let left = FIGURES.saturating_sub(shown.chars().count() + 1);
    if number.label.chars().count() + 2 <= left {
        out.line(&format!("  {:<w$}{shown}{judged}", number.label, w = left - 1));
    } else {
        out.wrapped(&number.label, 2);
        out.line(&format!("{shown:>FIGURES$}{judged}"));
    }
    if !number.settle.is_empty() && number.verdict != Some(Verdict::Inside) {
        out.wrapped(&number.settle, 6);
    }
}

fn working_lines(out: &mut Page, working: &Working, system: System) {
    for line in working.formula.lines() {
        out.line(&format!("      {}", line.trim()));
    }
    out.wrapped(&format!("= {} = {}", working.put_in(system), working.result.show(system)), 6);
    for term in &working.terms {
        let name = format!("        {:<6} {}", term.symbol, term.name);
        out.row(&name, &term.value.show(system));
    }
    if !working.valid.is_empty() {
        out.wrapped(&format!("Holds for: {}", working.valid), 6);
    }
    out.wrapped(&format!("Source: {}", working.source), 6);
}

/// The ways to get each hub off, gentlest first.
fn ways(out: &mut Page, plan: &Plan) {
    for hub in &plan.ways {
        out.section(&format!("Getting the {} off", hub.hub), "gentlest first");
        for way in &hub.ways {
            out.line(&format!("  {}: {}", way.name, way.may.words()));
            for one in &way.takes {
                out.wrapped(&format!("{}: {}", one.what, one.says), 6);
            }
            for bar in &way.bars {
                out.wrapped(&format!("not because {bar}"), 6);
            }
        }
    }
}

/// What falls due, counted from the day that the coupling was closed up.
fn dues(out: &mut Page, plan: &Plan) {
    if plan.dues.is_empty() {
        return;
    }
    out.section("Falls due", "counted from the day it was closed up");
    for due in &plan.dues {
        out.wrapped(&due.in_words(), 2);
    }
}

fn steps(out: &mut Page, title: &str, steps: &[Step]) {
    if steps.is_empty() {
        return;
    }
    out.section(title, "");
    for (at, step) in steps.iter().enumerate() {
        let mark = if step.done.is_some() { "[x]" } else { "[ ]" };
        let hold = if step.hold.is_some() { "HOLD " } else { "" };
        let done = step.done.as_ref().map(|done| format!("{} {}", done.at, done.by));
        out.row(
            &format!("  {mark} {:>2} {hold}{}", at + 1, said(&step.title)),
            &done.unwrap_or_default(),
        );
        let detail = said(&step.detail);
        out.wrapped(&detail, 9);
        if let Some(hold) = &step.hold {
            out.wrapped(&format!("HOLD: {hold}"), 9);
        }
        if !step.needs.is_empty() {
            out.wrapped(&format!("Needs: {}.", step.needs.join(", ")), 9);
        }
    }
}

/// A step's words, with a line to write on where a number is still to be measured.
fn said(pieces: &[Piece]) -> String {
    let piece = |piece: &Piece| match piece {
        Piece::Missing(what) => format!("____ ({what})"),
        Piece::Words(text) | Piece::Number(text) => text.clone(),
    };
    pieces.iter().map(piece).collect()
}
