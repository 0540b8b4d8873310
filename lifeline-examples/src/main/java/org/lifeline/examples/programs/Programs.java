package org.lifeline.examples.programs;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lifeline.examples.handover.ClearanceTable;
import org.lifeline.examples.handover.InstallationSheet;
import org.lifeline.examples.handover.LineDataSheet;
import org.lifeline.examples.handover.NumberOfWorkers;
import org.lifeline.examples.handover.StructureLoads;
import org.lifeline.examples.shared.ArgumentsTogether;
import org.lifeline.examples.shared.FileArguments;

/** The example programs by name. Immutable and thread-safe. */
public final class Programs {
    private static final String FILE = "FILE";
    private static final String DESIGN = "DESIGN     design file; the demonstration design where it is left out";

    private static final List<Program> ALL = List.of(
            new Program("single-span", "a fall in the middle of one span, both sides", List.of(), SingleSpan::main),
            new Program(
                    "five-spans",
                    "five spans with friction and an in-line energy absorber",
                    List.of(),
                    FiveSpans::main),
            new Program("corner", "a line that turns a corner and climbs", List.of(), CornerLine::main),
            new Program(
                    "yielding-posts",
                    "anchor load and clearance over the stiffness of posts",
                    List.of(),
                    YieldingPosts::main),
            new Program("sequence", "a second fall while the first worker hangs", List.of(), TwoInSequence::main),
            new Program(
                    "second-fall", "a second fall within a second; a rescuer", List.of(), SecondFallAndRescue::main),
            new Program(
                    "synthetic-rope", "a rope that is not linear beside one of steel", List.of(), SyntheticRope::main),
            new Program(
                    "span-study",
                    "anchor force, sag and clearance over the span",
                    List.of("FILE.svg  where the picture goes"),
                    SpanStudy::main),
            new Program(
                    "envelope",
                    "the worst place, temperature and side on a whole line",
                    List.of(DESIGN),
                    LineEnvelope::main),
            new Program(
                    "solve-for",
                    "for which values of a variable the criteria are met",
                    List.of(
                            DESIGN,
                            "VARIABLE   what is looked for, with the two values that follow",
                            "FROM       its least value with unit",
                            "TO         its largest value with unit"),
                    SolveFor::main),
            new Program(
                    "map",
                    "the criteria over two variables, as a table and a picture",
                    List.of(DESIGN, "FILE.svg   where the picture goes"),
                    TwoVariables::main),
            new Program(
                    "stringing",
                    "tension and sag to be read while a line is tensioned",
                    List.of(DESIGN),
                    Stringing::main),
            new Program(
                    "field-check",
                    "the pretension now, from a sag measured in the field",
                    List.of(
                            DESIGN,
                            "SPAN       number of the span that was measured",
                            "SAG        midspan sag with unit",
                            "ACCURACY   how exactly it was measured, with unit",
                            "TEMPERATURE  of the cable, with unit"),
                    FieldReading::main),
            new Program(
                    "study",
                    "Monte Carlo over pretension, friction, mass and force",
                    List.of(DESIGN, "CASES      how many cases", "FILE.csv   where all cases go"),
                    UncertainLine::main),
            new Program("parts", "a study in several Java machines, put together", List.of(), StudyParts::main),
            new Program(
                    "transient-study",
                    "arrests in time beside the energy balance, over the span",
                    List.of(),
                    TransientStudy::main),
            new Program(
                    "histories",
                    "a fall followed in time: peaks, a table of numbers, a picture",
                    List.of(DESIGN, "FILE.csv   where the histories go", "FILE.svg   where the picture goes"),
                    Histories::main),
            new Program(
                    "structure-loads",
                    "loads for the steel: vectors with their partners, pulls to the side",
                    List.of(DESIGN),
                    StructureLoads::main),
            new Program(
                    "number-of-workers",
                    "how many may be hooked on so that all criteria are met",
                    List.of(DESIGN),
                    NumberOfWorkers::main),
            new Program(
                    "clearance-table",
                    "clearance along the line, and where to keep off",
                    List.of(DESIGN),
                    ClearanceTable::main),
            new Program(
                    "installation",
                    "lengths to cut, take-up, constructional stretch, wrong readings",
                    List.of(DESIGN),
                    InstallationSheet::main),
            new Program("data-sheet", "the data sheet for a line, on one page", List.of(DESIGN), LineDataSheet::main),
            new Program(
                    "embedding", "a host program with its own threads and progress", List.of(), EmbeddingHost::main));

    /** The programs that move the falls of a design along its line unless they are told to keep to the stated ones. */
    private static final Set<String> MOVING = Set.of("solve-for", "map", "study");

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
     * @param takes its arguments in order, each optional; one that begins with {@code FILE} names a file and how it ends
     * @param main its main method
     */
    public record Program(String name, String task, List<String> takes, Main main) {
        /** Copies the list; lines of the program are broken to the width of a terminal. */
        public Program {
            takes = List.copyOf(takes);
            main = NarrowOutput.around(main);
        }

        /**
         * Tells what is wrong with arguments, so that no file is written under a mistyped name.
         *
         * @param arguments the arguments
         * @return what is wrong; empty if nothing is
         */
        public Optional<String> problem(List<String> arguments) {
            if (arguments.size() > takes.size()) {
                return Optional.of("example " + name + " takes "
                        + (takes.isEmpty() ? "no arguments" : "at most " + takes.size() + " arguments") + ", not "
                        + arguments.size());
            }
            for (int i = 0; i < arguments.size(); i++) {
                String first = takes.get(i).substring(0, takes.get(i).indexOf(' '));
                String ending = first.startsWith(FILE) ? first.substring(FILE.length()) : "";
                if (!arguments.get(i).endsWith(ending)) {
                    return Optional.of("example " + name + ", argument " + (i + 1) + ": \"" + arguments.get(i)
                            + "\" must be the name of a file that ends in " + ending);
                }
            }
            return ArgumentsTogether.problem(name, takes, arguments.size());
        }

        /**
         * The options that the program takes besides its arguments.
         *
         * @return the options; unmodifiable
         */
        public List<String> options() {
            List<String> list = new ArrayList<>();
            if (writesFiles()) {
                list.add(FileArguments.OVERWRITE);
            }
            if (MOVING.contains(name)) {
                list.add(FileArguments.STATED_FALLS);
            }
            if (name.equals("solve-for")) {
                list.add(FileArguments.NO_MOTION);
            }
            return List.copyOf(list);
        }

        /**
         * Tells whether the program writes files if they are named.
         *
         * @return true if it does; it then takes {@code --overwrite}
         */
        public boolean writesFiles() {
            return takes.stream().anyMatch(t -> t.startsWith(FILE));
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
