//! Where the lines of the mesh stand: close together where things happen, wider apart elsewhere.

/// How wide the meshes may be: `size` at the fine places, growing with the distance from them.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Grading {
    /// Places where the meshes are smallest (m).
    pub fine_m: Vec<f64>,
    /// Width there (m).
    pub size_m: f64,
    /// Growth of the width, a metre of distance.
    pub growth: f64,
    /// Widest mesh (m).
    pub largest_m: f64,
}

/// Points on which the width is integrated between two breaks.
const SAMPLES: usize = 256;

impl Grading {
    fn width_m(&self, x_m: f64) -> f64 {
        let near = self.fine_m.iter().map(|fine| (x_m - fine).abs()).fold(f64::INFINITY, f64::min);
        (self.size_m + self.growth * near).min(self.largest_m)
    }

    /// Lines through every break, in the order of the breaks, which must rise.
    pub fn lines(&self, breaks_m: &[f64]) -> Vec<f64> {
        let mut lines: Vec<f64> = breaks_m.first().copied().into_iter().collect();
        for pair in breaks_m.windows(2) {
            self.fill([pair[0], pair[1]], &mut lines);
        }
        lines
    }

    /// Equal shares of ∫ dx/width between two breaks; the first break is there already.
    fn fill(&self, [from, to]: [f64; 2], lines: &mut Vec<f64>) {
        let step = (to - from) / as_float(SAMPLES);
        let mut wanted = Vec::with_capacity(SAMPLES + 1);
        wanted.push(0.0);
        for k in 0..SAMPLES {
            let middle = from + (as_float(k) + 0.5) * step;
            wanted.push(wanted[k] + step / self.width_m(middle));
        }
        let total = wanted[SAMPLES];
        let count = (total - 1e-6).ceil().max(1.0);
        let mut k = 0;
        let mut line = 1.0;
        while line < count {
            let share = total * line / count;
            while wanted[k + 1] < share {
                k += 1;
            }
            let part = (share - wanted[k]) / (wanted[k + 1] - wanted[k]);
            lines.push(from + (as_float(k) + part) * step);
            line += 1.0;
        }
        lines.push(to);
    }
}

/// A count as a float.
#[expect(clippy::cast_precision_loss, reason = "counts here stay far below 2⁵²")]
pub(crate) fn as_float(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_rise_keep_the_breaks_and_are_fine_where_asked() {
        let grading =
            Grading { fine_m: vec![0.0, 0.1], size_m: 0.002, growth: 0.4, largest_m: 0.02 };
        let lines = grading.lines(&[0.0, 0.03, 0.1]);
        assert!(lines.windows(2).all(|pair| pair[0] < pair[1]), "{lines:?}");
        for wanted in [0.0, 0.03, 0.1] {
            assert!(lines.contains(&wanted), "{wanted}: {lines:?}");
        }
        let widest = lines.windows(2).map(|pair| pair[1] - pair[0]).fold(0.0, f64::max);
        assert!(lines[1] < 0.003 && widest > 0.008, "{lines:?}");
    }

    #[test]
    fn a_thin_place_gets_one_mesh() {
        let grading = Grading { fine_m: vec![], size_m: 1.0, growth: 0.4, largest_m: 1.0 };
        assert_eq!(grading.lines(&[0.0, 0.001]), vec![0.0, 0.001]);
        assert!(grading.lines(&[]).is_empty());
    }
}
