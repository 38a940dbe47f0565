//! From a design to printable solids, and those to bytes of 3MF and STL. Values in, bytes out.
