import RestwaterCore

/// What the shell knows of its glass, in points.
public struct GlassMeasure: Equatable, Sendable {
    public var width, height: Double
    public var pointsPerMm: Double
    /// Text size the user asked the phone for; 1 is the usual one.
    public var textScale: Double
    public var insetTop, insetBottom: Double

    public init(
        width: Double, height: Double, pointsPerMm: Double, textScale: Double = 1, insetTop: Double = 0, insetBottom: Double = 0
    ) {
        (self.width, self.height, self.pointsPerMm) = (width, height, pointsPerMm)
        (self.textScale, self.insetTop, self.insetBottom) = (textScale, insetTop, insetBottom)
    }

    /// As the core asks for it: its pixels are our points.
    func glass(_ hand: Hand) -> Glass {
        Glass(
            widthPx: width, heightPx: height, pxPerMm: pointsPerMm, textScale: textScale, leftHanded: hand == .left,
            insetTopPx: insetTop, insetBottomPx: insetBottom
        )
    }
}

extension GlassMeasure {
    /// Points in a millimetre of an iPhone's glass. iOS does not say; its pixels say which family of glass it is.
    /// Densities of Apple's published specifications, from memory: 326 an inch on glasses drawn at two pixels a point,
    /// 476 on the small 1080 x 2340, 401 on the 1080 x 1920, 458 to 460 on all others.
    public static func pointsPerMm(pixelWidth: Double, pixelHeight: Double, pixelsPerPoint: Double) -> Double {
        let (narrow, long) = (min(pixelWidth, pixelHeight), max(pixelWidth, pixelHeight))
        let perInch: Double
        switch (narrow, long) {
        case (1080, 2340): perInch = 476
        case (1080, 1920): perInch = 401
        case (..<900, _): perInch = 326
        default: perInch = 460
        }
        return perInch / pixelsPerPoint / 25.4
    }
}
