package org.lifeline.file.output;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The outputs of one command, which land together or not at all.
 *
 * <p>A place is claimed before anything is computed. It is refused if it is an input of the command, the place of another of
 * its outputs, a design file, or, unless overwriting was asked for, a file that is no former output of the same kind. Files
 * are written beside their places; {@link #commit} moves them there, and puts back what was there before if one of them
 * cannot be moved. A set that is closed without having been committed leaves nothing behind. Not thread-safe.
 */
public final class OutputSet implements AutoCloseable {
    private final boolean overwrite;
    private final List<Path> inputs;
    private final FileSteps steps;
    private final List<Output> outputs = new ArrayList<>();
    private final List<Path> made = new ArrayList<>();
    private final List<Path> stale = new ArrayList<>();

    OutputSet(boolean overwrite, List<Path> inputs, FileSteps steps) {
        this.overwrite = overwrite;
        this.inputs = List.copyOf(inputs);
        this.steps = steps;
    }

    /**
     * A set without outputs.
     *
     * @param overwrite true to replace also files that are no former outputs; never inputs or designs
     * @param inputs the files that the command reads
     * @return the set
     */
    public static OutputSet of(boolean overwrite, Path... inputs) {
        return new OutputSet(overwrite, List.of(inputs), FileSteps.none());
    }

    /**
     * Claims the place of an output.
     *
     * @param name the name of the file as it was typed
     * @param kind what will be written
     * @return the output, of which nothing is written yet
     * @throws OutputException if the place is refused
     */
    public Output claim(String name, FileKind kind) throws OutputException {
        return claim(name, kind, false);
    }

    Output claim(String name, FileKind kind, boolean formerOutput) throws OutputException {
        Target target = Target.of(name);
        for (Path input : inputs) {
            if (target.same(input)) {
                throw OutputException.refused(name, "must not be an input of the same command");
            }
        }
        for (Output other : outputs) {
            if (target.same(other.target().place())) {
                throw OutputException.refused(name, "must not be the place of two outputs");
            }
        }
        target.check(name, kind, formerOutput, overwrite);
        Output output = new Output(name, target, kind, formerOutput, steps);
        outputs.add(output);
        return output;
    }

    /**
     * Claims a folder for outputs whose names are known only later.
     *
     * @param name the name of the folder as it was typed; it is made if it is not there
     * @return the folder
     * @throws OutputException if the place is refused
     */
    public OutputFolder claimFolder(String name) throws OutputException {
        return OutputFolder.claim(this, name, overwrite);
    }

    /** Makes a folder, which is removed again if this set does not land. */
    void makeFolder(String name, Path folder) throws OutputException {
        try {
            Path above = folder.toAbsolutePath().getParent();
            if (above != null && !Files.exists(above)) {
                makeFolder(name, above);
            }
            if (!Files.isDirectory(folder)) {
                steps.before(FileSteps.Step.MAKE_FOLDER, folder);
                PartFiles.make(folder, p -> Files.createDirectory(p));
                made.add(folder);
            }
        } catch (IOException e) {
            throw OutputException.failed(name, e);
        }
    }

    /** A former output that this set does not write again; it goes when the set has landed. */
    void removeWhenDone(Path former) {
        stale.add(former);
    }

    /**
     * Moves every file that was written into its place, all or none, and writes to FIFOs and devices what was held back.
     *
     * @throws OutputException if an output cannot be written or moved; what was there before is there again
     */
    public void commit() throws OutputException {
        for (Output each : outputs) {
            each.writeHeld();
        }
        List<Output> files = outputs.stream().filter(o -> o.part() != null).toList();
        Moves moves = new Moves(files);
        try {
            PartFiles.move(moves::run);
        } catch (IOException e) {
            throw OutputException.failed(moves.at, e);
        }
        made.forEach(PartFiles::finished);
        made.clear();
        outputs.clear();
        for (Path each : stale) {
            try {
                Files.deleteIfExists(each);
            } catch (IOException e) {
                throw OutputException.failed(each.toString(), e);
            }
        }
        stale.clear();
    }

    /** Removes what was not committed. */
    @Override
    public void close() {
        List<Path> unfinished = new ArrayList<>(made);
        for (Output each : outputs) {
            Path part = each.part();
            if (part != null) {
                unfinished.add(part);
            }
        }
        PartFiles.remove(unfinished);
        outputs.clear();
        made.clear();
    }

    /** The moves of one set. */
    private final class Moves {
        private final List<Output> files;
        private final List<Path> moved = new ArrayList<>();

        /** Old files that were kept aside, by their places. */
        private final Map<Path, Path> kept = new LinkedHashMap<>();

        private String at = "";

        Moves(List<Output> files) {
            this.files = files;
        }

        void run() throws IOException {
            try {
                List<Target> targets = new ArrayList<>();
                for (Output each : files) {
                    at = each.name();
                    if (Thread.currentThread().isInterrupted()) {
                        throw new IOException("writing was interrupted");
                    }
                    Target now = each.recheck(overwrite);
                    targets.add(now);
                    if (files.size() > 1 && now.exists()) {
                        keep(now.place());
                    }
                }
                for (int i = 0; i < files.size(); i++) {
                    at = files.get(i).name();
                    move(files.get(i).part(), targets.get(i));
                }
            } catch (IOException e) {
                putBack();
                throw e;
            } finally {
                PartFiles.remove(List.copyOf(kept.values()));
            }
        }

        private void keep(Path place) throws IOException {
            Path aside = PartFiles.beside(place);
            steps.before(FileSteps.Step.KEEP, place);
            PartFiles.make(aside, p -> {
                try {
                    Files.createLink(p, place);
                } catch (IOException | UnsupportedOperationException e) {
                    // Not every file system has links, and not every user may make one to this file.
                    Files.copy(place, p, StandardCopyOption.COPY_ATTRIBUTES);
                }
            });
            kept.put(place, aside);
        }

        private void move(@Nullable Path part, Target target) throws IOException {
            if (part == null) {
                return;
            }
            steps.before(FileSteps.Step.MOVE, target.place());
            if (!target.exists() && Files.exists(target.place())) {
                // Two names of this set are one to a file system that does not tell capitals from small letters.
                throw new FileAlreadyExistsException(target.place().toString());
            }
            Files.move(part, target.place(), StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            PartFiles.finished(part);
            moved.add(target.place());
        }

        private void putBack() {
            for (Path place : moved) {
                Path old = kept.get(place);
                try {
                    if (old == null) {
                        Files.deleteIfExists(place);
                    } else {
                        Files.move(old, place, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
                        PartFiles.finished(old);
                    }
                } catch (IOException e) {
                    // Why the set did not land is reported already; an old file that cannot be put back stays aside.
                    if (old != null) {
                        PartFiles.finished(old);
                    }
                }
            }
        }
    }
}
