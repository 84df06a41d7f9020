//! Where labels go: spread along a line, on a rail with leaders, or at the first free place.

use crate::axis::real;
use crate::geometry::{Point, Rect, at, cross};
use crate::ink::{Anchor, Drawing, LETTER, Stroke, THIN, Words, leader_dot};

/// Places along a line for labels of given lengths, in order, none overlapping, each as near to
/// where it wants to be as the others allow, all between `from` and `to` if they fit at all.
///
/// Neighbours that would overlap join into a block that stands at its members' mean (pool
/// adjacent violators).
pub(crate) fn spread(wanted: &[f64], lengths: &[f64], from: f64, to: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wanted.len()).collect();
    order.sort_by(|a, b| wanted[*a].total_cmp(&wanted[*b]));
    let sorted: Vec<f64> = order.iter().map(|i| wanted[*i]).collect();
    let sizes: Vec<f64> = order.iter().map(|i| lengths[*i]).collect();
    let mut places = vec![0.0; wanted.len()];
    for (index, place) in order.into_iter().zip(in_order(&sorted, &sizes, from, to)) {
        places[index] = place;
    }
    places
}

/// As [`spread`], but the labels keep the order they are given in.
fn in_order(wanted: &[f64], lengths: &[f64], from: f64, to: f64) -> Vec<f64> {
    let Some(last) = wanted.len().checked_sub(1) else { return Vec::new() };
    let mut offsets = vec![0.0];
    for pair in lengths.windows(2) {
        offsets.push(offsets[offsets.len() - 1] + f64::midpoint(pair[0], pair[1]));
    }
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for (want, offset) in wanted.iter().zip(&offsets) {
        blocks.push((want - offset, 1));
        while let [.., (a, m), (b, n)] = blocks[..] {
            if a <= b {
                break;
            }
            blocks.truncate(blocks.len() - 2);
            blocks.push(((a * real(m) + b * real(n)) / real(m + n), m + n));
        }
    }
    let low = from + lengths[0] / 2.0;
    let high = (to - lengths[last] / 2.0 - offsets[last]).max(low);
    let mut starts = blocks
        .iter()
        .flat_map(|(start, count)| std::iter::repeat_n(start.clamp(low, high), *count));
    offsets.iter().map(|offset| offset + starts.next().unwrap_or(low)).collect()
}

/// A part's letter and the place inside the part that its leader ends at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Tag {
    pub letter: char,
    pub end: Point,
}

/// Radius of a letter's circle, mm.
pub(crate) const CIRCLE: f64 = 2.6;

/// Least distance between letters on the rail, mm.
const PITCH: f64 = 7.5;

/// Letters on one rail whose lower side lies at `y`; leaders end in a dot and never cross.
pub(crate) fn rail(drawing: &mut Drawing, tags: &[Tag], y: f64, from: f64, to: f64) {
    let (tags, places) = untangled(tags, y, from, to);
    for (tag, x) in tags.iter().zip(places) {
        letter(drawing, tag.letter, at(x, y - CIRCLE));
        drawing.line(at(x, y), tag.end, Stroke::of(THIN));
        leader_dot(drawing, tag.end);
    }
}

/// A letter in its circle.
pub(crate) fn letter(drawing: &mut Drawing, letter: char, centre: Point) {
    drawing.circle(centre, CIRCLE, Some(Stroke::of(THIN)), None);
    drawing.text(&Words::new(letter, LETTER).strong(), centre, Anchor::Middle);
}

/// Swaps letters whose leaders cross, and solves again, until none do.
fn untangled(tags: &[Tag], y: f64, from: f64, to: f64) -> (Vec<Tag>, Vec<f64>) {
    let mut tags = tags.to_vec();
    tags.sort_by(|a, b| a.end.x.total_cmp(&b.end.x).then(b.end.y.total_cmp(&a.end.y)));
    let half = PITCH / 2.0;
    let solve = |tags: &[Tag]| {
        let wanted: Vec<f64> = tags.iter().map(|tag| tag.end.x).collect();
        in_order(&wanted, &vec![PITCH; tags.len()], from - half, to + half)
    };
    let mut places = solve(&tags);
    for _ in 0..200 {
        let leader = |i: usize| (at(places[i], y), tags[i].end);
        let pairs = (0..tags.len()).flat_map(|a| (a + 1..tags.len()).map(move |b| (a, b)));
        let Some((a, b)) = pairs.into_iter().find(|(a, b)| cross(leader(*a), leader(*b))) else {
            break;
        };
        tags.swap(a, b);
        places = solve(&tags);
    }
    (tags, places)
}

/// Writes words at the first of several places that is clear, or else free; says whether any was.
pub(crate) fn place(
    drawing: &mut Drawing,
    words: &Words,
    candidates: &[(Point, Anchor)],
    within: Rect,
) -> bool {
    let bounds = |(point, anchor): (Point, Anchor)| words.bounds(point, anchor).grown(0.35, 0.25);
    let inside = || candidates.iter().copied().filter(|c| within.holds(bounds(*c)));
    let clear = inside().find(|c| drawing.is_clear(bounds(*c)));
    let found = clear.or_else(|| inside().find(|c| drawing.is_free(bounds(*c))));
    if let Some((point, anchor)) = found {
        drawing.text(words, point, anchor);
    }
    found.is_some()
}

/// A name that fits a width: as it is, or cut short with an ellipsis; nothing where not even one
/// letter fits. A number at its end stays, or two machines would be called alike.
pub(crate) fn fitting(name: &str, size: f64, width: f64) -> Option<Words> {
    let whole = Words::new(name, size);
    if whole.width() <= width {
        return Some(whole);
    }
    let numbered = name.rsplit_once(' ').filter(|(_, last)| last.len() <= 2);
    let cut = numbered.and_then(|(first, last)| cut(first, &format!(" {last}"), size, width));
    cut.or_else(|| self::cut(name, "", size, width))
}

fn cut(name: &str, end: &str, size: f64, width: f64) -> Option<Words> {
    let letters: Vec<char> = name.chars().collect();
    (1..letters.len()).rev().find_map(|count| {
        let cut: String = letters[..count].iter().collect();
        let words = Words::new(format!("{}…{end}", cut.trim_end()), size);
        (words.width() <= width).then_some(words)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_cut_name_keeps_its_number() {
        let cut = |name: &str, width| fitting(name, 3.0, width).map(|words| words.text);
        let room = Words::new("compr… 2", 3.0).width() + 0.01;
        assert_eq!(cut("compressor 2", room).as_deref(), Some("compr… 2"));
        assert_eq!(cut("compressor 2", 100.0).as_deref(), Some("compressor 2"));
        let room = Words::new("gear…", 3.0).width() + 0.01;
        assert_eq!(cut("gearbox", room).as_deref(), Some("gear…"));
        assert_eq!(cut("compressor 2", 0.1), None);
    }

    proptest! {
        /// None overlaps, order is kept, and where there is room nothing moves.
        #[test]
        fn labels_keep_their_distance(wanted in prop::collection::vec(0.0..100.0_f64, 1..12)) {
            let lengths = vec![5.0; wanted.len()];
            let mut places = spread(&wanted, &lengths, 0.0, 100.0);
            let alone = wanted.iter().enumerate().all(|(i, a)| {
                wanted.iter().skip(i + 1).all(|b| (a - b).abs() >= 5.0) && (2.5..97.5).contains(a)
            });
            if alone {
                for (place, want) in places.iter().zip(&wanted) {
                    prop_assert!((place - want).abs() < 1e-9);
                }
            }
            places.sort_by(f64::total_cmp);
            prop_assert!(places.windows(2).all(|pair| pair[1] - pair[0] > 5.0 - 1e-9));
            prop_assert!(places[0] > 2.5 - 1e-9 && places[places.len() - 1] < 97.5 + 1e-9);
        }

        #[test]
        fn leaders_do_not_cross(ends in prop::collection::vec((20.0..160.0_f64, 20.0..60.0_f64), 1..11)) {
            let tags: Vec<Tag> =
                ends.iter().map(|(x, y)| Tag { letter: 'A', end: at(*x, *y) }).collect();
            let (tags, places) = untangled(&tags, 8.5, 10.0, 170.0);
            for a in 0..tags.len() {
                for b in a + 1..tags.len() {
                    let leader = |i: usize| (at(places[i], 8.5), tags[i].end);
                    prop_assert!(!cross(leader(a), leader(b)));
                }
            }
        }
    }

    /// Two labels that want the same place stand to both sides of it.
    #[test]
    fn two_of_one_mind_share_the_middle() {
        assert_eq!(spread(&[50.0, 50.0], &[10.0, 10.0], 0.0, 100.0), [45.0, 55.0]);
    }
}
