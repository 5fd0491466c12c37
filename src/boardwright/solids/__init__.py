"""`Piece` → solids; dry fit; weight and centre of gravity. The only door to manifold3d and OCCT."""
