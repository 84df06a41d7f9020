//! What a round of solving a stage takes for granted: the joint's conductance and the films, from
//! the round before.

use super::case::{Case, Joint, Losses};
use super::model::{Coupled, Step};

/// Conductance and losses at a temperature.
pub(crate) struct Taken {
    /// Of the joint, at each pair (W/K).
    pub joint_w_k: Vec<f64>,
    losses: Losses,
}

impl Taken {
    /// As they are at a temperature and with a joint.
    pub fn new(case: &Case, temperature_k: &[f64], joint: &Joint) -> Self {
        let joint_w_k = case.joint_w_k(joint, temperature_k);
        Self { joint_w_k, losses: case.losses(temperature_k) }
    }

    /// The right-hand side of a stage: the kept factor holds a film, and the losses at `before_k`
    /// say how far the true one is from it.
    pub fn loaded(&self, case: &Case, step: &Step, right: &[f64], before_k: &[f64]) -> Vec<f64> {
        let mut loaded = right.to_vec();
        for (node, watts) in &self.losses.at_nodes_w {
            loaded[*node] -= step.tau_s * watts;
        }
        for skin in &case.model.skins {
            let held_w = case.model.film_w_m2k * skin.area_m2 * before_k[skin.node];
            loaded[skin.node] += step.tau_s * held_w;
        }
        loaded
    }

    /// What each body has lost in the stage so solved.
    pub fn lost_w(&self, case: &Case, before_k: &[f64], found_k: &[f64]) -> [f64; 2] {
        let mut lost_w = self.losses.of_bodies_w;
        for skin in &case.model.skins {
            let rise_k = found_k[skin.node] - before_k[skin.node];
            lost_w[usize::from(skin.node >= case.model.hub_nodes)] +=
                case.model.film_w_m2k * skin.area_m2 * rise_k;
        }
        lost_w
    }

    /// What another round, taking `next` instead, would still change (K): the joint by the step's
    /// own answer, the films as if each node were alone.
    pub fn left_k(
        &self,
        case: &Case,
        step: &Step,
        coupled: &Coupled,
        next: &Self,
        [before_k, found_k]: [&[f64]; 2],
    ) -> f64 {
        let model = case.model;
        let more_w_k = next.joint_w_k.iter().zip(&self.joint_w_k).map(|(next, last)| next - last);
        let more_j = model.differences(found_k).zip(more_w_k).map(|(k, w_k)| step.tau_s * k * w_k);
        let joint_k = coupled.shift_k(&more_j.collect::<Vec<_>>());
        let both = self.losses.at_nodes_w.iter().zip(&next.losses.at_nodes_w);
        let film_k = both.enumerate().map(|(k, ((node, last_w), (_, next_w)))| {
            let held_w_k = model.skins.get(k).map_or(0.0, |skin| model.film_w_m2k * skin.area_m2);
            let more_w = next_w - last_w - held_w_k * (found_k[*node] - before_k[*node]);
            (step.tau_s * more_w / model.stored_j_k[*node]).abs()
        });
        film_k.fold(joint_k, f64::max)
    }
}
