//! Misalignment as a share of what a coupling bears: offset, angle and axial position add up.
//!
//! ```text
//! u = o/O + a/A + x/X      u ≤ 1
//! ```
//! o, a, x offset, angle and axial movement asked · O, A, X what is borne of each when the others
//! are nothing
//!
//! The straight line is the safe side of the bulged curves that some sheets draw. A pack of a
//! coupling with two flexing planes sees offset as an angle, so only angle and axial count there.
//!
//! An allowance of the coupling is no target for the line-up: machines want less (`lineup`).

use mechanics::Estimate;
use quantities::{
    Angle, Basis, Kind, Length, Limits, Physical, Source, Value, Verdict, Working, judge,
};

use crate::share::{Share, ShareError};

/// What is asked at one engagement; each a magnitude, signs taken off. `None` is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Misalignment {
    /// Offset of the shafts.
    pub offset: Option<Estimate<Length>>,
    /// Angle at the engagement.
    pub angle: Option<Estimate<Angle>>,
    /// Distance from the axial position that it was made for.
    pub axial: Option<Estimate<Length>>,
}

/// What is borne of each when the others are nothing; `None` when the sheet is silent.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Borne {
    /// Offset.
    pub offset: Option<Length>,
    /// Angle at one engagement.
    pub angle: Option<Angle>,
    /// Axial movement to each side.
    pub axial: Option<Length>,
}

/// The shares, and what could not be told.
#[derive(Clone, Debug, PartialEq)]
pub struct Shares {
    /// Of the offset.
    pub offset: Option<Share>,
    /// Of the angle.
    pub angle: Option<Share>,
    /// Of the axial movement.
    pub axial: Option<Share>,
    /// Asked, but without a figure to compare with.
    pub no_figure: Vec<&'static str>,
}

/// The shares of a misalignment.
///
/// # Errors
/// [`ShareError`] for a magnitude below zero or an allowance not above it.
/// # Example
/// ```
/// use couplings::envelope::{Borne, Misalignment, shares};
/// use mechanics::Estimate;
/// use quantities::{Angle, Length, Physical};
/// let degrees = |deg: f64| Angle::from_si(deg.to_radians());
/// let asked = Misalignment {
///     angle: Some(Estimate::exact(degrees(0.3))),
///     axial: Some(Estimate::exact(Length::from_si(1.0e-3))),
///     ..Misalignment::default()
/// };
/// let borne = Borne {
///     angle: Some(degrees(1.0)),
///     axial: Some(Length::from_si(2.5e-3)),
///     ..Borne::default()
/// };
/// let used = shares(&asked, &borne)?.sum().unwrap();
/// assert_eq!(used.show(Default::default()), "70 ± 0 %");
/// # Ok::<(), couplings::share::ShareError>(())
/// ```
pub fn shares(asked: &Misalignment, borne: &Borne) -> Result<Shares, ShareError> {
    let mut no_figure = Vec::new();
    let mut share = |what, asked: Option<Value>, borne: Option<Value>| match (asked, borne) {
        (Some(asked), Some(borne)) => Share::new(what, asked, borne).map(Some),
        (Some(_), None) => {
            no_figure.push(what);
            Ok(None)
        }
        (None, _) => Ok(None),
    };
    let length = |length: Length| Value::new(Kind::Offset, length);
    let angle = |angle: Angle| Value::new(Kind::Slope, angle);
    let offset = share(
        "offset allowance",
        asked.offset.map(|offset| offset.shown(Kind::Offset)),
        borne.offset.map(length),
    )?;
    let angle = share(
        "angle allowance",
        asked.angle.map(|angle| angle.shown(Kind::Slope)),
        borne.angle.map(angle),
    )?;
    let axial = share(
        "axial allowance",
        asked.axial.map(|axial| axial.shown(Kind::Offset)),
        borne.axial.map(length),
    )?;
    Ok(Shares { offset, angle, axial, no_figure })
}

impl Shares {
    /// Those that are known.
    pub fn known(&self) -> impl Iterator<Item = &Share> {
        [&self.offset, &self.angle, &self.axial].into_iter().flatten()
    }

    /// Their sum; `None` when there is none, or when one is asked without a figure. The `±` is that
    /// of shares found apart from each other.
    pub fn sum(&self) -> Option<Value> {
        if !self.no_figure.is_empty() || self.known().next().is_none() {
            return None;
        }
        let fractions = self.known().map(Share::fraction);
        let (sum, squares) = fractions.fold((0.0, 0.0), |(sum, squares), fraction| {
            (sum + fraction.si, squares + fraction.plus_minus.unwrap_or(0.0).powi(2))
        });
        Some(Value { kind: Kind::Percent, si: sum, plus_minus: Some(squares.sqrt()) })
    }

    /// Inside while the sum is no more than one.
    pub fn verdict(&self) -> Verdict {
        self.sum().map_or(Verdict::NotMeasured, |sum| judge(&sum, &Limits::at_most(1.0)))
    }

    /// How the sum was found.
    pub fn working(&self) -> Option<Working> {
        let formula = match (&self.offset, &self.angle, &self.axial) {
            (Some(_), Some(_), Some(_)) => "u = o/O + a/A + x/X",
            (Some(_), Some(_), None) => "u = o/O + a/A",
            (Some(_), None, Some(_)) => "u = o/O + x/X",
            (None, Some(_), Some(_)) => "u = a/A + x/X",
            (Some(_), None, None) => "u = o/O",
            (None, Some(_), None) => "u = a/A",
            (None, None, Some(_)) => "u = x/X",
            (None, None, None) => return None,
        };
        let letters = [(&self.offset, "o", "O"), (&self.angle, "a", "A"), (&self.axial, "x", "X")];
        let mut working =
            Working::new("Misalignment used, all together", formula, self.sum()?, STRAIGHT_LINE);
        for (share, asked, borne) in letters {
            let Some(share) = share else { continue };
            working = working
                .term(asked, format!("asked of the {}", share.what), share.asked)
                .term(borne, share.what, share.borne);
        }
        Some(working.valid("allowances each given for the others being nothing"))
    }
}

const STRAIGHT_LINE: Source = Source::new(
    "straight line between the allowances: the safe side of the usual diagram",
    "",
    Basis::Memory,
);

/// The axial movement that an angle leaves over.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AxialLeft {
    /// Angle asked.
    pub angle: Angle,
    /// Angle borne.
    pub angle_borne: Angle,
    /// Axial movement borne in line.
    pub axial_borne: Length,
    /// What is left; nothing when the angle takes all.
    pub left: Length,
}

/// The axial movement that an angle leaves over on the straight line.
///
/// ```text
/// x = X·(1 − a/A)
/// ```
/// # Errors
/// [`ShareError`] for an angle below zero or figures not above it.
pub fn axial_left(
    angle: Angle,
    angle_borne: Angle,
    axial_borne: Length,
) -> Result<AxialLeft, ShareError> {
    let shown = |angle| Value::new(Kind::Slope, angle);
    let share = Share::new("angle allowance", shown(angle), shown(angle_borne))?;
    if !(axial_borne.is_finite() && axial_borne.si() > 0.0) {
        return Err(ShareError::Borne { what: "axial allowance", si: axial_borne.si() });
    }
    let left = axial_borne * (1.0 - share.fraction().si).max(0.0);
    Ok(AxialLeft { angle, angle_borne, axial_borne, left })
}

impl AxialLeft {
    /// How it was found.
    pub fn working(&self) -> Working {
        let result = Value::new(Kind::Offset, self.left);
        Working::new(
            "Axial movement that the angle leaves",
            "x = X·(1 − a/A)",
            result,
            STRAIGHT_LINE,
        )
        .term("X", "axial allowance", Value::new(Kind::Offset, self.axial_borne))
        .term("a", "angle at the pack", Value::new(Kind::Slope, self.angle))
        .term("A", "angle allowance", Value::new(Kind::Slope, self.angle_borne))
        .valid("nothing is left once the angle takes all of its allowance")
    }
}

/// The offset that two flexing planes bear: span·tan(angle).
///
/// # Valid
/// Angles below a quarter turn; the span is from flexing plane to flexing plane.
pub fn offset_borne(span: Length, angle: Angle) -> Length {
    span * angle.si().tan()
}

/// The angle between faces whose gap differs across a diameter: atan(difference/diameter).
///
/// # Errors
/// [`ShareError::Borne`] for a diameter not above zero.
pub fn angle_of_gap(difference: Length, diameter: Length) -> Result<Angle, ShareError> {
    if diameter.is_finite() && diameter.si() > 0.0 {
        Ok(Angle::from_si((difference.si() / diameter.si()).atan()))
    } else {
        Err(ShareError::Borne { what: "face diameter", si: diameter.si() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(mm: f64) -> Length {
        Length::from_si(mm / 1e3)
    }

    fn inch(inch: f64) -> Length {
        Length::from_si(inch * 0.0254)
    }

    fn degrees(degrees: f64) -> Angle {
        Angle::from_si(degrees.to_radians())
    }

    fn sum(lengths: [[Length; 2]; 2], gap: [Length; 2], diameter: Length) -> (Shares, f64) {
        let angle = |difference| angle_of_gap(difference, diameter).unwrap();
        let asked = Misalignment {
            offset: Some(Estimate::exact(lengths[1][0])),
            angle: Some(Estimate::exact(angle(gap[0]))),
            axial: Some(Estimate::exact(lengths[0][0])),
        };
        let borne = Borne {
            offset: Some(lengths[1][1]),
            angle: Some(angle(gap[1])),
            axial: Some(lengths[0][1]),
        };
        let shares = shares(&asked, &borne).unwrap();
        let sum = shares.sum().unwrap().si;
        (shares, sum)
    }

    /// Army TM 10-4320-307-24, para. 3-7, flexible coupling, examples 1 (inch) and 2 (mm): both are
    /// printed as acceptable; example 1 prints 36 % axial. The manual reads a graph; the straight
    /// line agrees with its verdicts.
    #[test]
    fn the_straight_line_agrees_with_the_manual() {
        let axial = [inch(0.035), inch(0.098)];
        let lateral = [inch(0.007), inch(0.047)];
        let (shares, total) = sum([axial, lateral], [inch(0.020), inch(0.061)], inch(7.0));
        assert!((shares.axial.as_ref().unwrap().fraction().si - 0.36).abs() <= 0.005);
        assert!((total - 0.834).abs() <= 0.0005, "{total}");
        assert_eq!(shares.verdict(), Verdict::Inside);
        let (shares, total) =
            sum([[mm(1.48), mm(2.5)], [mm(0.34), mm(1.2)]], [mm(0.13), mm(1.56)], mm(180.0));
        assert!((total - 0.959).abs() <= 0.0005, "{total}");
        assert_eq!(shares.verdict(), Verdict::Inside);
    }

    /// Worked by hand: 2.5·(1 − 0.3/1) = 1.75 mm; 500·tan 0.5° = 4.36343 mm; 18 in·tan 0.25° =
    /// 0.0785403 in; atan(0.25/200) = 0.0716197°.
    #[test]
    fn geometry_by_hand() {
        let left = axial_left(degrees(0.3), degrees(1.0), mm(2.5)).unwrap().left;
        assert!((left.si() - 1.75e-3).abs() <= 0.5e-5);
        assert!((offset_borne(mm(500.0), degrees(0.5)).si() - 4.363_43e-3).abs() <= 0.5e-8);
        assert!(
            (offset_borne(inch(18.0), degrees(0.25)).si() / 0.0254 - 0.078_540_3).abs() <= 0.5e-7
        );
        let angle = angle_of_gap(mm(0.25), mm(200.0)).unwrap();
        assert!((angle.si().to_degrees() - 0.071_619_7).abs() <= 0.5e-7);
        let none = axial_left(degrees(1.2), degrees(1.0), mm(2.5)).unwrap().left;
        assert_eq!(none, Length::default());
        assert!(angle_of_gap(mm(0.25), mm(0.0)).is_err());
    }

    /// A figure that the sheet lacks leaves no sum, and says which it was.
    #[test]
    fn a_missing_figure_leaves_no_sum() {
        let asked = Misalignment {
            angle: Some(Estimate::exact(degrees(0.1))),
            axial: Some(Estimate::exact(mm(0.2))),
            ..Misalignment::default()
        };
        let borne = Borne { angle: Some(degrees(0.5)), ..Borne::default() };
        let shares = shares(&asked, &borne).unwrap();
        assert_eq!((shares.sum(), shares.verdict()), (None, Verdict::NotMeasured));
        assert_eq!(shares.no_figure, ["axial allowance"]);
        assert!(shares.working().is_none());
    }

    proptest::proptest! {
        /// What the angle leaves over is just what fills the envelope.
        #[test]
        fn what_is_left_fills_the_envelope(angle in 0.0..1.0_f64, axial in 0.1..9.0_f64) {
            let left = axial_left(degrees(angle), degrees(1.0), mm(axial)).unwrap().left;
            let asked = Misalignment {
                angle: Some(Estimate::exact(degrees(angle))),
                axial: Some(Estimate::exact(left)),
                ..Misalignment::default()
            };
            let borne = Borne { angle: Some(degrees(1.0)), axial: Some(mm(axial)), ..Borne::default() };
            let sum = shares(&asked, &borne).unwrap().sum().unwrap().si;
            proptest::prop_assert!((sum - 1.0).abs() < 1e-12);
        }
    }
}
