package org.lifeline.examples.programs;

import java.util.List;
import java.util.Set;

/** The example programs by name. Immutable and thread-safe. */
public final class Programs {
    private static final List<Program> ALL = List.of(
            new Program("single-span", "a fall in the middle of one span, both sides", SingleSpan::main),
            new Program("five-spans", "five spans with friction and an in-line energy absorber", FiveSpans::main),
            new Program("corner", "a line that turns a corner and climbs", CornerLine::main),
            new Program("yielding-posts", "anchor load and clearance over the stiffness of posts", YieldingPosts::main),
            new Program("sequence", "a second fall while the first worker hangs", TwoInSequence::main),
            new Program("synthetic-rope", "a rope that is not linear beside one of steel", SyntheticRope::main),
            new Program("span-study", "anchor force, sag and clearance over the span", SpanStudy::main),
            new Program("envelope", "the worst place, temperature and side on a whole line", LineEnvelope::main),
            new Program("solve-for", "for which values of a variable the criteria are met", SolveFor::main),
            new Program("map", "the criteria over two variables, as a table and a picture", TwoVariables::main),
            new Program("stringing", "tension and sag to be read while a line is tensioned", Stringing::main),
            new Program("field-check", "the pretension now, from a sag measured in the field", FieldReading::main),
            new Program("study", "Monte Carlo over pretension, friction, mass and force", UncertainLine::main),
            new Program(
                    "transient-study",
                    "arrests in time beside the energy balance, over the span",
                    TransientStudy::main),
            new Program("histories", "a fall followed in time: peaks, a table of numbers, a picture", Histories::main),
            new Program("embedding", "a host program with its own threads and progress", EmbeddingHost::main));

    private static final Set<String> WRITING = Set.of("span-study", "map", "study", "histories");

    private Programs() {}

    /** A main method. */
    @FunctionalInterface
    public interface Main {
        /**
         * Runs the program.
         *
         * @param args its arguments
         * @throws Exception whatever it throws
         */
        void run(String... args) throws Exception;
    }

    /**
     * An example program.
     *
     * @param name its name on the command line
     * @param task what it shows
     * @param main its main method
     */
    public record Program(String name, String task, Main main) {
        /**
         * Tells whether the program writes files if they are named.
         *
         * @return true if it does; it then takes {@code --overwrite}
         */
        public boolean writesFiles() {
            return WRITING.contains(name);
        }
    }

    /**
     * All of them.
     *
     * @return the programs in the order of reading; unmodifiable
     */
    public static List<Program> all() {
        return ALL;
    }
}
