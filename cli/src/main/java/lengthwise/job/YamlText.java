package lengthwise.job;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * Reads one YAML document, bounded in size and depth, into nodes that know their place.
 *
 * <p>The file may come from anyone: aliases (which can unfold to billions of nodes) and tags (which name types) are
 * refused before any node is made.
 */
final class YamlText {
    static final int MOST_BYTES = 1 << 20;
    /** An escape that is no whole number of Java's: the library answers it with an error of its own inner workings. */
    private static final Pattern NO_LETTER = Pattern.compile("\\\\U[89A-Fa-f][0-9A-Fa-f]{7}");

    private static final int DEEPEST = 20;

    private final String file;
    private final String text;
    private final LoadSettings settings = LoadSettings.builder()
            .setCodePointLimit(MOST_BYTES)
            .setAllowNonScalarKeys(true)
            .build();

    YamlText(String file, String text) {
        this.file = file;
        this.text = text;
    }

    /** Reads a file's text: UTF-8, or UTF-16 with a byte order mark. */
    static YamlText of(Path path) throws JobException {
        if (Files.isDirectory(path)) {
            throw new JobException(
                    path + ": this is a folder; name the job file in it, such as " + path.resolve("job.yaml"));
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(path)) {
            bytes = in.readNBytes(MOST_BYTES + 1);
        } catch (NoSuchFileException e) {
            throw new JobException(path + ": there is no such file; check the spelling and the folder");
        } catch (IOException e) {
            throw new JobException(path + ": the file cannot be read: " + e.getMessage());
        }
        if (bytes.length > MOST_BYTES) {
            throw new JobException(path + ": the file is larger than 1 MiB; a job file is a few kilobytes of text");
        }
        return new YamlText(path.toString(), decoded(path, bytes));
    }

    private static String decoded(Path path, byte[] bytes) throws JobException {
        boolean utf16 = bytes.length >= 2
                && ((bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF)
                        || (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE));
        Charset charset = utf16 ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
        try {
            String text = charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new JobException(path + ": the file is not text in UTF-8; save it as UTF-8 in your editor");
        }
    }

    /** Returns the root of the one document. */
    Entry root() throws JobException {
        if (text.stripLeading().startsWith("<")) {
            throw error(
                    Optional.empty(),
                    "this looks like a drawing, not a job file; list it in a job file under drawings:");
        }
        try {
            refuseWhatNoJobNeeds();
            Optional<Node> root = new Compose(settings).composeString(text);
            if (root.isEmpty()) {
                throw error(Optional.empty(), "the file is empty; a job file begins with version: 1");
            }
            return Entry.root(file, root.get());
        } catch (MarkedYamlEngineException e) {
            throw error(e.getProblemMark(), explained(e));
        } catch (ReaderException e) {
            throw error(
                    Optional.empty(),
                    "the file has a character that no text has (code %04x, character %d); save it as plain text in UTF-8"
                            .formatted(e.getCodePoint(), e.getPosition() + 1));
        } catch (NumberFormatException e) {
            throw error(
                    Optional.empty(),
                    "an escape in double quotes (%s) stands for no letter; write the letter itself, or use single quotes"
                            .formatted(NO_LETTER
                                    .matcher(text)
                                    .results()
                                    .map(MatchResult::group)
                                    .findFirst()
                                    .orElse("a backslash with a number")));
        } catch (YamlEngineException e) {
            throw error(Optional.empty(), "the file is not readable YAML: " + oneLine(String.valueOf(e.getMessage())));
        }
    }

    private void refuseWhatNoJobNeeds() throws JobException {
        int documents = 0;
        int depth = 0;
        for (Event event : new Parse(settings).parseString(text)) {
            if (event instanceof DocumentStartEvent && ++documents > 1) {
                throw error(event.getStartMark(), "a second document begins here (---); write one job a file");
            }
            if (event instanceof AliasEvent) {
                throw error(event.getStartMark(), "found an alias (*name); write the values out");
            }
            if (event instanceof CollectionStartEvent && ++depth > DEEPEST) {
                throw error(event.getStartMark(), "nested deeper than " + DEEPEST + " levels; no key goes that deep");
            }
            if (event instanceof CollectionEndEvent) {
                depth--;
            }
            if (tag(event).isPresent()) {
                throw error(
                        event.getStartMark(),
                        "found the tag " + Quote.of(tag(event).get().replace(Tag.PREFIX, "!!"))
                                + "; tags mean nothing here, leave it out");
            }
        }
    }

    private static Optional<String> tag(Event event) {
        if (event instanceof ScalarEvent scalar) {
            return scalar.getTag();
        }
        return event instanceof CollectionStartEvent start ? start.getTag() : Optional.empty();
    }

    /** Says what is wrong in a maker's words where it is a common slip, else in the parser's. */
    private String explained(MarkedYamlEngineException e) {
        boolean tab = e.getProblemMark()
                .flatMap(mark -> text.lines().skip(mark.getLine()).findFirst())
                .filter(line -> line.stripTrailing().matches("\\s*\\t.*"))
                .isPresent();
        if (tab) {
            return "this line is indented with a tab; indent with spaces";
        }
        String problem = oneLine(e.getProblem());
        String opened = e.getContextMark()
                .map(mark -> " that opens in line " + (mark.getLine() + 1))
                .orElse("");
        if (problem.startsWith("expected ',' or")) {
            return "the bracket" + opened + " is not closed before this; close it, and put a comma between values";
        }
        if (problem.equals("found unexpected end of stream")) {
            return "the quote" + opened + " is not closed; close it";
        }
        if (problem.startsWith("expected <block end>")) {
            return "this does not line up with the lines above; keys of one part begin in the same column";
        }
        if (problem.startsWith("could not find expected ':'")) {
            return "here or just above a line has no colon, or a quote is not closed; write key: value";
        }
        if (problem.startsWith("found character")) {
            return "a value cannot begin with this character; put it in quotes";
        }
        if (problem.startsWith("mapping values are not allowed")) {
            return "a colon too many: the line above has none, this line is indented too far, or text with a colon needs quotes";
        }
        return "this is not readable YAML: " + problem
                + "; look for a missing quote, bracket, colon or space here or just above";
    }

    private static String oneLine(String message) {
        return message.replaceAll("\\s+", " ").trim();
    }

    private JobException error(Optional<Mark> mark, String what) {
        Place place = mark.map(at -> new Place(file, at.getLine() + 1, at.getColumn() + 1))
                .orElse(new Place(file, 1, 1));
        return new JobException(place + ": " + what);
    }
}
