//! The shaped edge of a prism: how far its end is set back at each distance from its outline.

use core::f64::consts::FRAC_PI_2;

use latchwright_geometry::trig;

use crate::fault::MeshFault;
use crate::grid;
use crate::noding::Crease;
use crate::outline::Outline;
use crate::plane::Plane;
use crate::region::Region;
use crate::strip;

/// The profile of an edge: pairs of distance from the outline and set-back of the end, both mm,
/// outermost first; nothing for a sharp edge. The last set-back is 0.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Edge {
    profile: Vec<(f64, f64)>,
}

impl Edge {
    /// No shape at all.
    pub fn sharp() -> Self {
        Self::default()
    }

    /// A 45° chamfer of this width, mm.
    pub fn chamfer(width: f64) -> Self {
        if width > 0.0 {
            Self {
                profile: vec![(0.0, width), (width, 0.0)],
            }
        } else {
            Self::sharp()
        }
    }

    /// A quarter of a circle of this radius, mm, bulging outwards.
    pub fn rounded(radius: f64) -> Self {
        Self::quarter(radius, |angle| {
            (1.0 - trig::cos(angle), 1.0 - trig::sin(angle))
        })
    }

    /// A quarter of a circle of this radius, mm, hollow: the fillet at a pin's root.
    pub fn hollow(radius: f64) -> Self {
        Self::quarter(radius, |angle| (trig::sin(angle), trig::cos(angle)))
    }

    fn quarter(radius: f64, at: impl Fn(f64) -> (f64, f64)) -> Self {
        if radius <= 0.0 {
            return Self::sharp();
        }
        let parts = if radius < 0.5 { 3 } else { 5 };
        let mut profile: Vec<(f64, f64)> = (0..=parts)
            .map(|part| at(FRAC_PI_2 * f64::from(part) / f64::from(parts)))
            .map(|(inwards, back)| (inwards * radius, back * radius))
            .collect();
        if let Some(last) = profile.last_mut() {
            *last = (radius, 0.0);
        }
        if let Some(first) = profile.first_mut() {
            *first = (0.0, radius);
        }
        Self { profile }
    }

    /// How wide the shaped edge is, mm.
    pub fn width(&self) -> f64 {
        self.profile.last().map_or(0.0, |(inwards, _)| *inwards)
    }
}

/// An edge laid along the outline of one prism.
pub(crate) struct Slope {
    region: Region,
    /// Height of the prism's end, mm, and whether set-back goes up (1) or down (−1).
    end: f64,
    up: f64,
    profile: Vec<(f64, f64)>,
    rings: Vec<Vec<Outline>>,
    /// The groups of the outline and of the rings, as many as there are pairs in the profile.
    groups: Vec<usize>,
}

impl Slope {
    /// `None` for a sharp edge.
    pub(crate) fn new(
        edge: &Edge,
        region: &Region,
        outline: usize,
        end: f64,
        up: f64,
    ) -> Result<Option<Self>, MeshFault> {
        if edge.profile.len() < 2 {
            return Ok(None);
        }
        let rings = edge
            .profile
            .iter()
            .skip(1)
            .map(|(inwards, _)| Ok(region.inset(*inwards)?.outlines().to_vec()))
            .collect::<Result<Vec<_>, MeshFault>>()?;
        Ok(Some(Self {
            region: region.clone(),
            end,
            up,
            profile: edge.profile.clone(),
            rings,
            groups: vec![outline],
        }))
    }

    /// Hands its rings over as further groups of outlines.
    pub(crate) fn with_groups(mut self, groups: &mut Vec<Vec<Outline>>) -> Self {
        for ring in core::mem::take(&mut self.rings) {
            self.groups.push(groups.len());
            groups.push(ring);
        }
        self
    }

    /// The lines along which its faces meet, so that no triangle bridges them.
    pub(crate) fn creases(&self) -> Vec<Crease> {
        let width = self.profile.last().map_or(0.0, |(inwards, _)| *inwards);
        self.region
            .outlines()
            .iter()
            .flat_map(|outline| strip::creases(outline, width))
            .collect()
    }

    /// The group inside which the end is level.
    pub(crate) fn innermost(&self) -> usize {
        self.groups.last().copied().unwrap_or(0)
    }

    /// Its lowest and its highest height, mm.
    pub(crate) fn span(&self) -> (f64, f64) {
        let most = self.profile.first().map_or(0.0, |(_, back)| *back);
        let other = self.end + self.up * most;
        (self.end.min(other), self.end.max(other))
    }

    /// A height between its lowest and its highest, mm.
    pub(crate) fn middle(&self) -> f64 {
        let most = self.profile.first().map_or(0.0, |(_, back)| *back);
        self.end + self.up * most / 2.0
    }

    /// Its height over a node of the plane, mm.
    pub(crate) fn at(&self, plane: &Plane, node: usize) -> f64 {
        let on = self
            .groups
            .iter()
            .position(|group| plane.lies_on(node, *group));
        let back = match on.and_then(|index| self.profile.get(index)) {
            Some((_, back)) => *back,
            None => self.back_at(self.region.distance(grid::point(plane.nodes[node]))),
        };
        self.end + self.up * back
    }

    fn back_at(&self, distance: f64) -> f64 {
        let pairs = self.profile.iter().zip(self.profile.iter().skip(1));
        for ((near, back), (far, next)) in pairs {
            if distance <= *far {
                let share = (distance - near) / (far - near).max(1e-12);
                return back + (next - back) * share.clamp(0.0, 1.0);
            }
        }
        0.0
    }
}
