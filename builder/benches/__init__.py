"""The physics and the tables behind benches: everything is worked out here, and the browser only looks it up."""
