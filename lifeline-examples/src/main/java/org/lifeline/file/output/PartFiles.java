package org.lifeline.file.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/**
 * The unfinished files of this process. When the process is told to stop, they are removed; a set of files that is being moved
 * into place is moved as a whole first. Thread-safe.
 */
final class PartFiles {
    private static final Set<Path> UNFINISHED = new LinkedHashSet<>();
    private static boolean stopping;

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(PartFiles::stop, "removes unfinished files"));
    }

    private PartFiles() {}

    /** What makes a file or folder. */
    @FunctionalInterface
    interface Maker {
        void make(Path path) throws IOException;
    }

    /** Moves that must not be cut in two. */
    @FunctionalInterface
    interface Moves {
        void run() throws IOException;
    }

    /** A name beside a place, of a length that does not depend on it. */
    static Path beside(Path place) {
        String random = UUID.randomUUID().toString().substring(0, 18);
        return place.resolveSibling(".lifeline-" + random + ".part");
    }

    /** Makes an unfinished file or folder. */
    static synchronized void make(Path path, Maker maker) throws IOException {
        if (stopping) {
            throw new IOException("the program is being stopped");
        }
        UNFINISHED.add(path);
        try {
            maker.make(path);
        } catch (IOException e) {
            UNFINISHED.remove(path);
            throw e;
        }
    }

    /** Runs moves while nothing is removed. */
    static synchronized void move(Moves moves) throws IOException {
        if (stopping) {
            throw new IOException("the program is being stopped");
        }
        moves.run();
    }

    /** A file or folder is finished: it is where it belongs, or gone. */
    static synchronized void finished(Path path) {
        UNFINISHED.remove(path);
    }

    /** Removes what is unfinished, the last made first; a folder that holds something else stays. */
    static synchronized void remove(List<Path> paths) {
        List<Path> lastFirst = new ArrayList<>(paths);
        java.util.Collections.reverse(lastFirst);
        for (Path each : lastFirst) {
            if (UNFINISHED.remove(each)) {
                try {
                    Files.deleteIfExists(each);
                } catch (IOException e) {
                    // What cannot be removed was reported, if at all, when it could not be written.
                }
            }
        }
    }

    private static synchronized void stop() {
        stopping = true;
        remove(List.copyOf(UNFINISHED));
    }
}
