package org.lifeline.analysis.motion;

/**
 * One mesh on which the first catch was computed, and what came out.
 *
 * <p>Immutable and thread-safe.
 *
 * @param mesh the mesh
 * @param steps steps to the end of the first catch
 * @param peaks what came out
 * @param spread largest relative change of arrest force, tension and lowest point since the mesh before [-]; NaN on the
 *     first mesh
 * @since 1.0.0
 */
public record MeshRun(Mesh mesh, long steps, Peaks peaks, double spread) {
    /**
     * A mesh.
     *
     * @param segmentLength length of the segments in the spans where somebody falls [m]; twice that elsewhere
     * @param nodes number of nodes
     * @since 1.0.0
     */
    public record Mesh(double segmentLength, long nodes) {}

    /**
     * What came out on a mesh.
     *
     * @param arrestForce largest force in a connecting subsystem [N]
     * @param tension largest tension in the cable [N]
     * @param lowest lowest elevation of a harness attachment [m]
     * @since 1.0.0
     */
    public record Peaks(double arrestForce, double tension, double lowest) {}
}
