package dropline.harness.stream;

/** A message is not what the form of the stream says; the words say why. Cheap: there may be thousands a second. */
final class MalformedException extends Exception {
    private static final long serialVersionUID = 1L;

    MalformedException(String why) {
        super(why, null, false, false);
    }
}
