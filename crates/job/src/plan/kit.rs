//! What to bring: tools and supplies, worked out for this job.

use quantities::{Kind, Length, System, Torque, Value};
use tables::tools::{bore_gauge_for, feelers, micrometer_for, torque_wrench_for};

use super::{Context, KitItem, Step, lineup as line_up};
use crate::file::End;

pub(super) fn kit<'a>(cx: &Context, steps: impl Iterator<Item = &'a Step>) -> Vec<KitItem> {
    let mut kit = Kit { system: cx.system_of_job(), items: Vec::new() };
    sizes(cx, &mut kit);
    let system = kit.system;
    kit.add(format!("feeler gauges, {}", feelers(system).show()), "gaps, feet");
    tightening(cx, &mut kit);
    shims(cx, &mut kit);
    pulling(cx, &mut kit);
    grease(cx, &mut kit);
    parts(cx, &mut kit);
    for step in steps {
        for need in &step.needs {
            kit.add(need.clone(), &super::sizes::capital(&step.stage.title().to_lowercase()));
        }
    }
    on_hand(cx, &mut kit);
    kit.items
}

/// Says of each item whether the plant has it.
fn on_hand(cx: &Context, kit: &mut Kit) {
    let tools: Vec<Vec<String>> = cx.file.site.tools.iter().map(|tool| words(tool)).collect();
    for item in &mut kit.items {
        let own = words(&item.what);
        if tools.iter().any(|tool| within(tool, &own) || within(&own, tool)) {
            item.why.push_str("; on hand here");
        }
    }
}

struct Kit {
    system: System,
    items: Vec<KitItem>,
}

impl Kit {
    /// Adds an item. What is there already, or there more exactly, is not brought twice; what is
    /// there less exactly gives way.
    fn add(&mut self, what: String, why: &str) {
        let asked = core(&what);
        if asked.iter().all(|part| self.has(part)) {
            return;
        }
        let vague = |item: &KitItem| match (&core(&item.what)[..], &asked[..]) {
            ([one], [other]) => within(one, other),
            _ => false,
        };
        let item = KitItem { what: what.clone(), why: why.to_owned() };
        match self.items.iter().position(vague) {
            Some(place) => self.items[place].what = what,
            None => self.items.push(item),
        }
    }

    fn has(&self, part: &[String]) -> bool {
        self.items.iter().any(|item| within(part, &words(&item.what)))
    }
}

fn within(part: &[String], whole: &[String]) -> bool {
    !part.is_empty() && part.iter().all(|word| whole.contains(word))
}

/// The things that an item names, each as its words: of alternatives the first, without what only
/// describes it.
fn core(what: &str) -> Vec<Vec<String>> {
    let ends = [",", " or ", " with ", " in date", " of one set"];
    let bare = ends.iter().fold(what, |text, end| text.split(end).next().unwrap_or(text));
    bare.split(" and ").map(words).collect()
}

/// Its words in lower case, each without an s at its end.
fn words(text: &str) -> Vec<String> {
    let parts = text.split(|c: char| c.is_whitespace() || c == ',');
    let plain = parts.filter(|word| !word.is_empty()).map(str::to_lowercase);
    plain.map(|word| word.strip_suffix('s').map_or(word.clone(), str::to_owned)).collect()
}

fn sizes(cx: &Context, kit: &mut Kit) {
    for end in End::BOTH {
        let Some(size) = cx.joint_diameter(end) else { continue };
        let shaft = cx.sizes(end).shaft.as_ref().map_or(size, |shaft| shaft.mean.value);
        if let Some(range) = micrometer_for(shaft, kit.system) {
            kit.add(format!("outside micrometer, {}", range.show()), "shafts");
        }
        let bore = cx.sizes(end).bore.as_ref().map_or(size, |bore| bore.mean.value);
        if let Some(range) = bore_gauge_for(bore, kit.system) {
            kit.add(
                format!("bore gauge, {}, and a setting ring or standard", range.show()),
                "bores",
            );
        }
    }
}

fn tightening(cx: &Context, kit: &mut Kit) {
    let torque: Option<Torque> = cx.closeup().torque();
    if let Some(range) = torque.and_then(|torque| torque_wrench_for(torque, kit.system)) {
        kit.add(format!("torque wrench, {}", range.show()), "coupling bolts");
    }
}

/// Every shim of the packs worked out, counted: both feet of a plane get one pack each.
fn shims(cx: &Context, kit: &mut Kit) {
    let Some(found) = cx.lineup() else { return };
    let mut counted: Vec<(Length, u32)> = Vec::new();
    for shim in line_up::foot_work(found).iter().flat_map(|work| work.packing.goes_in()) {
        match counted.iter_mut().find(|(thickness, _)| thickness == shim) {
            Some((_, count)) => *count += 2,
            None => counted.push((*shim, 2)),
        }
    }
    counted.sort_by(|a, b| b.0.value.total_cmp(&a.0.value));
    for (shim, count) in counted {
        let unit = Value::new(Kind::Offset, shim).unit(cx.system);
        let thickness = line_up::thickness(cx, shim);
        kit.add(format!("{count} shims of {thickness} {unit}"), "feet, one pack under each foot");
    }
    if !line_up::foot_work(found).is_empty() {
        kit.add(
            "two dial indicators with magnetic feet".to_owned(),
            "watching the feet go sideways",
        );
    }
}

/// Seals, gaskets, bolts and nuts of this form, counted.
fn parts(cx: &Context, kit: &mut Kit) {
    let Some(about) = super::coupling::about(cx) else { return };
    let bolts = &cx.file.coupling.sheet.bolts;
    for part in about.parts.iter().filter(|part| matches!(part.letter, 'F' | 'G' | 'H' | 'N')) {
        let Some(count) = part.count else { continue };
        let sort = match (part.letter, bolts.size.as_deref(), bolts.grade.as_deref()) {
            ('F' | 'G', _, _) => ", new".to_owned(),
            ('H', Some(size), Some(grade)) => format!(", {size} {grade}"),
            ('H' | 'N', Some(size), _) => format!(", {size}"),
            _ => String::new(),
        };
        let name = if count == 1 { part.name.clone() } else { plural(&part.name) };
        kit.add(format!("{count} {name}{sort}"), "close-up");
    }
}

/// "bolts and nuts".
fn plural(name: &str) -> String {
    name.split(" and ").map(|one| format!("{one}s")).collect::<Vec<_>>().join(" and ")
}

fn pulling(cx: &Context, kit: &mut Kit) {
    let classes = End::BOTH.iter().filter_map(|end| {
        let found = cx.removal(*end)?;
        Some((found.puller?, found.pull.force.high))
    });
    if let Some((puller, pull)) = classes.max_by_key(|(puller, _)| puller.tons) {
        let words = super::removal::puller_words(cx, &puller, pull);
        kit.add(format!("puller {words}, square to the hub"), "taking hubs off");
    }
}

fn grease(cx: &Context, kit: &mut Kit) {
    let words = super::closeup::grease_words(cx);
    if !words.is_empty() {
        kit.add(words, "close-up");
    }
}
