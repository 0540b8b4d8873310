package org.lifeline.file.output;

import java.io.IOException;
import java.nio.file.Path;

/** Is told of each step on the disk before it is taken; tests let a step fail or interrupt the thread. */
@FunctionalInterface
interface FileSteps {
    /** Steps on the disk. */
    enum Step {
        /** A folder is made. */
        MAKE_FOLDER,
        /** An unfinished file is made. */
        MAKE_PART,
        /** The unfinished file is given the owner of the one that it will replace. */
        KEEP_OWNER,
        /** Bytes are written. */
        WRITE,
        /** The disk is told to keep what was written. */
        FORCE,
        /** The file that will be replaced is kept aside. */
        KEEP,
        /** A file is moved into its place. */
        MOVE
    }

    /** A step is about to be taken. */
    void before(Step step, Path path) throws IOException;

    /** Nothing happens. */
    static FileSteps none() {
        return (step, path) -> {};
    }
}
