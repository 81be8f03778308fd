package gable.opc;

import jakarta.xml.bind.annotation.XmlAccessType;
import jakarta.xml.bind.annotation.XmlAccessorType;
import jakarta.xml.bind.annotation.XmlAttribute;
import jakarta.xml.bind.annotation.XmlElement;
import jakarta.xml.bind.annotation.XmlRootElement;
import jakarta.xml.bind.annotation.adapters.CollapsedStringAdapter;
import jakarta.xml.bind.annotation.adapters.XmlJavaTypeAdapter;
import java.util.ArrayList;
import java.util.List;

/**
 * What JAXB binds the relationships and content types parts to (OPC Annex D), each element with its
 * place in the text. Fields are empty when an attribute is missing; {@link OpcXml} looks for that.
 */
@XmlAccessorType(XmlAccessType.NONE)
abstract class Bound {

  static final String TYPES = "http://schemas.openxmlformats.org/package/2006/content-types";
  static final String RELATIONSHIPS =
      "http://schemas.openxmlformats.org/package/2006/relationships";

  /** Offset of the element's first character. */
  int from;

  /** Offset behind the element's last character. */
  int to;

  /** Offset of the end tag; for an empty element that of the element. */
  int endTag;

  /** Where it starts, for people. */
  Place place = Place.FILE;

  /** The root of a content types part. */
  @XmlRootElement(name = "Types", namespace = TYPES)
  @XmlAccessorType(XmlAccessType.NONE)
  static final class Types extends Bound {

    @XmlElement(name = "Default", namespace = TYPES)
    final List<ExtensionType> defaults = new ArrayList<>();

    @XmlElement(name = "Override", namespace = TYPES)
    final List<NamedType> overrides = new ArrayList<>();
  }

  /** The content type of all parts with an extension. */
  @XmlAccessorType(XmlAccessType.NONE)
  static final class ExtensionType extends Bound {

    @XmlAttribute(name = "Extension")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String extension = "";

    @XmlAttribute(name = "ContentType")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String contentType = "";
  }

  /** The content type of one part. */
  @XmlAccessorType(XmlAccessType.NONE)
  static final class NamedType extends Bound {

    @XmlAttribute(name = "PartName")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String partName = "";

    @XmlAttribute(name = "ContentType")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String contentType = "";
  }

  /** The root of a relationships part. */
  @XmlRootElement(name = "Relationships", namespace = RELATIONSHIPS)
  @XmlAccessorType(XmlAccessType.NONE)
  static final class Relations extends Bound {

    @XmlElement(name = "Relationship", namespace = RELATIONSHIPS)
    final List<Relation> relations = new ArrayList<>();
  }

  /** One relationship. */
  @XmlAccessorType(XmlAccessType.NONE)
  static final class Relation extends Bound {

    @XmlAttribute(name = "Id")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String id = "";

    @XmlAttribute(name = "Type")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String type = "";

    @XmlAttribute(name = "Target")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String target = "";

    @XmlAttribute(name = "TargetMode")
    @XmlJavaTypeAdapter(CollapsedStringAdapter.class)
    String targetMode = "Internal";
  }
}
