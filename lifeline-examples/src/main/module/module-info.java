/**
 * The design file and the result file: JSON in and out of the core's types.
 *
 * <p>The command line and the example programs of the same jar are not exported; without picocli on the module path they do
 * not run, and the files do.
 */
module org.lifeline.file {
    requires transitive org.lifeline.core;
    requires com.fasterxml.jackson.databind;
    requires static info.picocli;
    requires static org.jspecify;

    exports org.lifeline.file;
    exports org.lifeline.file.reproduce;
    exports org.lifeline.file.study;

    opens org.lifeline.examples.cli to info.picocli;
}
