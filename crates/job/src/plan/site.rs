//! The plant's rules put into a job, and where they came before what it would have been.
//!
//! Of two limits the stricter holds. What is chosen goes by the job where the job says it, by the
//! plant's rules where it does not.

use std::borrow::Cow;

use quantities::{Measured, Physical, Ratio};
use tables::nut_factor::Threads;

use super::Step;
use super::steps::Way;
use crate::file::{Named, Site, Text, is_default};
use crate::{JobFile, Stage};

/// A job with the plant's rules in it.
pub(super) struct Ruled<'a> {
    pub file: Cow<'a, JobFile>,
    /// Where they came before the usual, in words.
    pub said: Vec<(Stage, String)>,
    /// Stages for which the job itself says nothing.
    pub untouched: Vec<Stage>,
}

/// How closely a torque that was put on must be what was wanted, where no rule says it: torque
/// wrenches are held to about four per cent (ISO 6789, from memory).
pub(super) const TORQUE_WITHIN: f64 = 0.05;

pub(super) fn ruled(file: &JobFile) -> Ruled<'_> {
    let site = &file.site;
    let mut ruled =
        Ruled { file: Cow::Borrowed(file), said: Vec::new(), untouched: untouched(file) };
    if !is_default(site) {
        ruled.heat(site);
        ruled.lineup(site);
        ruled.closeup(site);
        ruled.removal(site);
    }
    ruled
}

/// The stages that a rule may speak for while the job says nothing.
fn untouched(file: &JobFile) -> Vec<Stage> {
    let removal = is_default(&file.removal) && is_default(&file.inspection);
    let stages = [
        (Stage::Heat, is_default(&file.heat)),
        (Stage::Lineup, is_default(&file.lineup)),
        (Stage::Closeup, is_default(&file.closeup)),
        (Stage::Removal, removal),
    ];
    stages.into_iter().filter(|(_, nothing)| *nothing).map(|(stage, _)| stage).collect()
}

impl Ruled<'_> {
    fn say(&mut self, stage: Stage, what: &str) {
        let rules = if self.file.site.rules.is_empty() {
            "Plant rule".to_owned()
        } else {
            format!("Plant rule ({})", self.file.site.rules)
        };
        self.said.push((stage, format!("{rules}: {what}.")));
    }

    fn heat(&mut self, site: &Site) {
        if stricter(&mut self.file.to_mut().heat.limit, &site.hub_limit) {
            self.say(Stage::Heat, &format!("no hub over {}", written(&site.hub_limit)));
        }
    }

    fn lineup(&mut self, site: &Site) {
        let (own, rule) = (&mut self.file.to_mut().lineup.limits, &site.limits);
        let held = [
            (stricter(&mut own.offset, &rule.offset), "offset at most", written(&rule.offset)),
            (stricter(&mut own.slope, &rule.slope), "slope at most", written(&rule.slope)),
            (stricter(&mut own.foot, &rule.foot), "a foot rises at most", written(&rule.foot)),
            (
                stricter(&mut own.pipes, &rule.pipes),
                "pipes move the shaft at most",
                written(&rule.pipes),
            ),
        ];
        for (_, what, limit) in held.into_iter().filter(|(held, ..)| *held) {
            self.say(Stage::Lineup, &format!("{what} {limit}"));
        }
        if self.file.lineup.shims.stock.is_empty() && !site.shims.is_empty() {
            self.file.to_mut().lineup.shims.stock.clone_from(&site.shims);
            let stock: Vec<&str> = site.shims.iter().map(Measured::text).collect();
            self.say(Stage::Lineup, &format!("shims in store, {}", stock.join(", ")));
        }
    }

    fn closeup(&mut self, site: &Site) {
        if let (None, Some(threads)) = (self.file.closeup.threads, site.threads) {
            self.file.to_mut().closeup.threads = Some(threads);
            let how = prepared(threads);
            self.say(Stage::Closeup, &format!("threads {how}, where the job says nothing"));
        }
        if let Some(within) = &site.torque_within {
            let within = within.text();
            self.say(Stage::Closeup, &format!("torque within {within} of what is wanted"));
        }
        self.grease(site);
    }

    /// Whether what the sheet asks for is in store.
    fn grease(&mut self, site: &Site) {
        let Some(asked) = self.file.coupling.sheet.lubricant.name.clone() else { return };
        if site.greases.is_empty() {
            return;
        }
        if tells_apart(&asked).is_empty() {
            let store = site.greases.join(", ");
            self.say(
                Stage::Closeup,
                &format!("“{asked}” names no grease that could be looked for in store ({store})"),
            );
            return;
        }
        let held = site.greases.iter().find(|held| is_held(held, &asked));
        match held {
            Some(held) => self.say(Stage::Closeup, &format!("{held} is in store")),
            None => self.say(
                Stage::Closeup,
                &format!("{asked} is not among what is in store ({})", site.greases.join(", ")),
            ),
        }
    }

    fn removal(&mut self, site: &Site) {
        let removal = &mut self.file.to_mut().removal;
        let usual = (removal.puller.is_none(), removal.margin.is_none());
        let largest =
            site.pullers.iter().max_by(|a, b| a.value().si().total_cmp(&b.value().si())).cloned();
        let allowed = (removal.heat_allowed, site.heat_allowed);
        if let (None, Some(_)) = allowed {
            removal.heat_allowed = site.heat_allowed;
        }
        if usual.0 {
            removal.puller.clone_from(&largest);
        }
        if usual.1 {
            removal.margin.clone_from(&site.puller_margin);
        }
        match allowed {
            (None, Some(true)) => self.say(Stage::Removal, "heat may be used at the machine"),
            (None, Some(false)) => self.say(Stage::Removal, "no heat at the machine"),
            (Some(true), Some(false)) => self.say(
                Stage::Removal,
                "no heat at the machine, and the job says otherwise: the permit decides",
            ),
            _ => {}
        }
        if let Some(puller) = largest.filter(|_| usual.0) {
            self.say(Stage::Removal, &format!("the largest puller here, {}", puller.text()));
        }
        if let Some(margin) = site.puller_margin.as_ref().filter(|_| usual.1) {
            self.say(Stage::Removal, &format!("puller over pull by {} at least", margin.text()));
        }
    }
}

/// Puts the rule's limit in where the job has none or a wider one; true where it did.
fn stricter<Q: Physical>(own: &mut Text<Q>, rule: &Text<Q>) -> bool {
    let Some(limit) = rule else { return false };
    let wider = own.as_ref().is_none_or(|own| own.value().si() > limit.value().si());
    if wider {
        own.clone_from(rule);
    }
    wider
}

/// How threads are prepared, in words.
fn prepared(threads: Threads) -> &'static str {
    match threads {
        Threads::Dry => "dry",
        Threads::ZincPlated => "zinc plated and dry",
        Threads::Oiled => "oiled",
        Threads::Lubricated => "well greased or oiled",
        Threads::Molybdenum => "with molybdenum paste",
    }
}

/// Whether what is in store is what is asked for: every word that tells the asked one apart is in
/// its name.
fn is_held(held: &str, asked: &str) -> bool {
    let held = words(held);
    tells_apart(asked).iter().all(|word| held.contains(word))
}

/// The words of a grease's name without those that every grease has.
fn tells_apart(name: &str) -> Vec<String> {
    const EVERY: [&str; 4] = ["grease", "greases", "oil", "lubricant"];
    words(name).into_iter().filter(|word| !EVERY.contains(&word.as_str())).collect()
}

fn words(text: &str) -> Vec<String> {
    let kept = |c: char| c.is_alphanumeric() || c == '-';
    let words = text.split(|c: char| !kept(c)).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect()
}

fn written<Q: Physical>(text: &Text<Q>) -> &str {
    text.as_ref().map_or("", Measured::text)
}

/// Within what part of the torque wanted a torque put on must lie.
pub(super) fn torque_within(site: &Site) -> f64 {
    let within = site.torque_within.as_ref();
    within.map_or(TORQUE_WITHIN, |within: &Measured<Ratio>| within.value().si())
}

/// The plant's hold points put into the steps.
pub(super) fn holds(site: &Site, way: Way, steps: &mut [Step]) {
    let rules: &Named<String> = match way {
        Way::On => &site.holds.on,
        Way::Off => &site.holds.off,
    };
    for step in steps {
        let name = step.id.split_once('.').map_or("", |(_, name)| name);
        if let Some(hold) = rules.get(name) {
            step.hold = Some(format!("{hold} (plant rule)"));
        }
    }
}
