//! Binary STL: 84 + 50 n bytes, no unit, one part a file.

use crate::mesh::{Mesh, Vector3, cross, length, less};

/// The mesh as binary STL, numbers in mm; the same bytes each time.
///
/// The header says so; it does not begin with `solid`, by which a text file is told.
///
/// # Source
/// The format's layout, from two descriptions of it.
pub fn stl(mesh: &Mesh) -> Vec<u8> {
    let count = u32::try_from(mesh.triangles.len()).unwrap_or(u32::MAX);
    let mut bytes = Vec::with_capacity(84 + 50 * mesh.triangles.len());
    let mut header = [b' '; 80];
    let words = b"Latchwright, lengths in millimetres";
    header[..words.len()].copy_from_slice(words);
    bytes.extend_from_slice(&header);
    bytes.extend_from_slice(&count.to_le_bytes());
    for triangle in mesh.triangles.iter().take(count as usize) {
        let [a, b, c] = mesh.corners(*triangle);
        for place in [normal(a, b, c), a, b, c] {
            for value in place {
                #[expect(clippy::cast_possible_truncation, reason = "the format has 32 bits")]
                bytes.extend_from_slice(&(value as f32).to_le_bytes());
            }
        }
        bytes.extend_from_slice(&[0, 0]);
    }
    bytes
}

fn normal(a: Vector3, b: Vector3, c: Vector3) -> Vector3 {
    let across = cross(less(b, a), less(c, a));
    let long = length(across);
    if long > 0.0 {
        across.map(|value| value / long)
    } else {
        [0.0; 3]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_box_is_684_bytes() {
        let bytes = stl(&Mesh::cuboid(10.0, 20.0, 5.0));
        assert_eq!(bytes.len(), 684);
        assert_eq!(bytes.get(80..84), Some(&12_u32.to_le_bytes()[..]));
        assert!(!bytes.starts_with(b"solid"));
    }
}
