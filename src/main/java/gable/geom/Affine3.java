package gable.geom;

/**
 * An affine map in the convention of 3MF (core specification 1.4, section 3.3): points are row
 * vectors, {@code p' = [x y z 1] M}, and the last column of M is 0 0 0 1. The components are the
 * twelve others, row by row; the last row is the translation.
 *
 * @param m00 image of x, first coordinate
 * @param m01 image of x, second coordinate
 * @param m02 image of x, third coordinate
 * @param m10 image of y, first coordinate
 * @param m11 image of y, second coordinate
 * @param m12 image of y, third coordinate
 * @param m20 image of z, first coordinate
 * @param m21 image of z, second coordinate
 * @param m22 image of z, third coordinate
 * @param m30 translation along x
 * @param m31 translation along y
 * @param m32 translation along z
 */
public record Affine3(
    double m00,
    double m01,
    double m02,
    double m10,
    double m11,
    double m12,
    double m20,
    double m21,
    double m22,
    double m30,
    double m31,
    double m32) {

  /** The map that changes nothing. */
  public static final Affine3 IDENTITY = new Affine3(1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0);

  /** The map with the twelve numbers of a 3MF transform attribute, in its order. */
  public static Affine3 of(double... m) {
    if (m.length != 12) {
      throw new IllegalArgumentException("a transform has 12 numbers, not " + m.length);
    }
    return new Affine3(m[0], m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8], m[9], m[10], m[11]);
  }

  /** Uniform scale about the origin. */
  public static Affine3 scale(double factor) {
    return new Affine3(factor, 0, 0, 0, factor, 0, 0, 0, factor, 0, 0, 0);
  }

  /** The map whose rows are the images of the unit vectors and of the origin. */
  public static Affine3 rows(Vec3 x, Vec3 y, Vec3 z, Vec3 origin) {
    return new Affine3(
        x.x(),
        x.y(),
        x.z(),
        y.x(),
        y.y(),
        y.z(),
        z.x(),
        z.y(),
        z.z(),
        origin.x(),
        origin.y(),
        origin.z());
  }

  /** The turn about the origin that takes {@code up} to +z by the shortest way. */
  public static Affine3 layingUp(Vec3 up) {
    Vec3 from = up.unit();
    Vec3 axis = from.cross(Vec3.Z);
    double sine = axis.norm();
    double cosine = from.z();
    if (sine == 0) {
      return cosine > 0 ? IDENTITY : new Affine3(1, 0, 0, 0, -1, 0, 0, 0, -1, 0, 0, 0);
    }
    Vec3 k = axis.times(1 / sine);
    return rows(
        turned(Vec3.X, k, sine, cosine),
        turned(Vec3.Y, k, sine, cosine),
        turned(Vec3.Z, k, sine, cosine),
        Vec3.ZERO);
  }

  /** Rotation formula of Rodrigues. */
  private static Vec3 turned(Vec3 v, Vec3 axis, double sine, double cosine) {
    return v.times(cosine)
        .plus(axis.cross(v).times(sine))
        .plus(axis.times(axis.dot(v) * (1 - cosine)));
  }

  /** Image of a point. */
  public Vec3 apply(Vec3 p) {
    return new Vec3(
        p.x() * m00 + p.y() * m10 + p.z() * m20 + m30,
        p.x() * m01 + p.y() * m11 + p.z() * m21 + m31,
        p.x() * m02 + p.y() * m12 + p.z() * m22 + m32);
  }

  /** Image of a direction: no translation. */
  public Vec3 applyVector(Vec3 d) {
    return new Vec3(
        d.x() * m00 + d.y() * m10 + d.z() * m20,
        d.x() * m01 + d.y() * m11 + d.z() * m21,
        d.x() * m02 + d.y() * m12 + d.z() * m22);
  }

  /** This map first, then {@code next}. */
  public Affine3 then(Affine3 next) {
    return rows(
        next.applyVector(new Vec3(m00, m01, m02)),
        next.applyVector(new Vec3(m10, m11, m12)),
        next.applyVector(new Vec3(m20, m21, m22)),
        next.apply(new Vec3(m30, m31, m32)));
  }

  /** Determinant of the linear part: negative for a mirrored placement. */
  public double determinant() {
    return m00 * (m11 * m22 - m12 * m21)
        - m01 * (m10 * m22 - m12 * m20)
        + m02 * (m10 * m21 - m11 * m20);
  }

  /**
   * The map back.
   *
   * @throws IllegalArgumentException if the linear part is singular
   */
  public Affine3 inverse() {
    double det = determinant();
    if (!(Math.abs(det) > 0) || !Double.isFinite(det)) {
      throw new IllegalArgumentException("a singular transform has no inverse: " + this);
    }
    Vec3 x =
        new Vec3(m11 * m22 - m12 * m21, m02 * m21 - m01 * m22, m01 * m12 - m02 * m11)
            .times(1 / det);
    Vec3 y =
        new Vec3(m12 * m20 - m10 * m22, m00 * m22 - m02 * m20, m02 * m10 - m00 * m12)
            .times(1 / det);
    Vec3 z =
        new Vec3(m10 * m21 - m11 * m20, m01 * m20 - m00 * m21, m00 * m11 - m01 * m10)
            .times(1 / det);
    Affine3 linear = rows(x, y, z, Vec3.ZERO);
    return rows(x, y, z, linear.applyVector(new Vec3(-m30, -m31, -m32)));
  }

  /**
   * Reciprocal condition number of the linear part in the Frobenius norm, times three: 1 for turns,
   * mirrors and uniform scales, 0 for a singular map.
   */
  public double reciprocalCondition() {
    double det = determinant();
    if (!(Math.abs(det) > 0) || !Double.isFinite(det)) {
      return 0;
    }
    return 3 / (linearNorm() * inverse().linearNorm());
  }

  private double linearNorm() {
    return Math.sqrt(
        m00 * m00 + m01 * m01 + m02 * m02 + m10 * m10 + m11 * m11 + m12 * m12 + m20 * m20
            + m21 * m21 + m22 * m22);
  }
}
