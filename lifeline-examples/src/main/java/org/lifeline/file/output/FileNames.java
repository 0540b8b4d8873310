package org.lifeline.file.output;

import java.io.IOException;
import java.nio.channels.ClosedByInterruptException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystemLoopException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;

/** Names of files as a person typed them, and why a file cannot be read or written, in words. */
public final class FileNames {
    private FileNames() {}

    /**
     * The path of a file.
     *
     * @param name the name as it was typed
     * @return the path
     * @throws IllegalArgumentException if it is empty, or no name of a file on this system and in its locale
     */
    public static Path path(String name) {
        if (name.isEmpty()) {
            throw new IllegalArgumentException("the name of a file must not be empty");
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new IllegalArgumentException(
                    '"' + name + "\" cannot be the name of a file on this system in its present locale", e);
        }
    }

    /**
     * Why a file could not be read or written.
     *
     * @param e what the system reported
     * @return the reason, without the name of the file
     */
    public static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "does not exist";
        }
        if (e instanceof AccessDeniedException) {
            return "access is denied";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "exists already";
        }
        if (e instanceof NotDirectoryException) {
            return "is no folder";
        }
        if (e instanceof FileSystemLoopException) {
            return "is a link to itself";
        }
        if (e instanceof ClosedByInterruptException) {
            return "writing was interrupted";
        }
        if (e instanceof FileSystemException f && f.getReason() != null) {
            return f.getReason();
        }
        String message = e.getMessage();
        return message == null || message.isBlank() ? "input or output failed" : message;
    }
}
