package lengthwise.svg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import lengthwise.drawing.DrawingException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DoctypeTest {
    /** Everything that XML lets a document type hold (XML 1.0, fifth edition, productions 28 to 30 and 45 to 83). */
    private static final String DOCTYPE = """
            <!DOCTYPE svg PUBLIC "-//a 'quoted' name//EN" 'http://example.org/"svg".dtd' [
              <!-- a comment with ]> and " and ' and <? in it -->
              <?an instruction with ]> and " and <!-- in it?>
              <!ENTITY wide "<rect id='good' x='20' y='20' width='120' height='60'/>">
              <!ENTITY far SYSTEM 'file:///nowhere>]'>
              <!ENTITY % part "<!-- a ]> b -->">
              <!ELEMENT path (title?, desc*)>
              <!ATTLIST path d CDATA #REQUIRED kind (a|b) "a">
              <!NOTATION picture SYSTEM "a]>">
              %part;
            ] >
            """;

    private static String document(String doctype) {
        return "<?xml version=\"1.0\"?><!-- <!DOCTYPE in a comment -->\n" + doctype + Drawn.page("&wide;");
    }

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "ISO-8859-1", "UTF-16BE", "UTF-16LE", "UTF-16"})
    void wholeOnesAreRead(String charset) throws Exception {
        byte[] bytes = document(DOCTYPE)
                .replace("?>", " encoding=\"" + charset + "\"?>")
                .replace("in it encoding=\"" + charset + "\"?>", "in it?>")
                .getBytes(Charset.forName(charset));
        assertThat(Doctype.isCutShort(bytes)).isFalse();
        assertThat(SafeXml.read("a.svg", bytes).document().getElementById("good"))
                .isNotNull();
    }

    @Test
    void withoutOneNothingIsCutShort() {
        for (String text :
                List.of("", "<", "<svg>", "<!", "<!-- <!DOCTYPE", "no markup", "<svg><!DOCTYPE svg [</svg>")) {
            assertThat(Doctype.isCutShort(text.getBytes(StandardCharsets.UTF_8)))
                    .as(text)
                    .isFalse();
        }
    }

    @Test
    void cutAnywhereItIsRefusedInSilence() {
        String whole = document(DOCTYPE);
        int begin = whole.indexOf(DOCTYPE);
        for (int end = begin; end < begin + DOCTYPE.length(); end++) {
            assertRefusedInSilence(whole.substring(0, end));
        }
    }

    /** What opens something that nothing closes, at every place. */
    @ParameterizedTest
    @ValueSource(strings = {"<!--", "<?a ", "\"", "'", "[", "<![INCLUDE[", "<!ENTITY a \"", "%", "<"})
    void damagedAnywhereItIsReadOrRefusedInSilence(String damage) {
        String whole = document(DOCTYPE);
        int begin = whole.indexOf(DOCTYPE);
        for (int at = begin; at < begin + DOCTYPE.length(); at++) {
            String text = whole.substring(0, at) + damage + whole.substring(at);
            assertThat(said(() -> SafeXml.read("a.svg", text.getBytes(StandardCharsets.UTF_8))))
                    .as(text)
                    .isEmpty();
        }
    }

    private static void assertRefusedInSilence(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> SafeXml.read("a.svg", bytes))
                .isInstanceOf(DrawingException.class)
                .message()
                .doesNotContain("\n");
        assertThat(said(() -> SafeXml.read("a.svg", bytes))).as(text).isEmpty();
    }

    private interface Reading {
        void read() throws DrawingException;
    }

    /** Returns what goes to the standard error stream while something is read or refused. */
    private static String said(Reading reading) {
        PrintStream before = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        System.setErr(new PrintStream(said, true, StandardCharsets.UTF_8));
        try {
            reading.read();
        } catch (DrawingException refused) {
            assertThat(refused.getMessage()).doesNotContain("\n");
        } finally {
            System.setErr(before);
        }
        return said.toString(StandardCharsets.UTF_8);
    }
}
