// Written from knowledge; signatures only (../README.md).
@_exported import Foundation

public typealias CLLocationDegrees = Double
public typealias CLLocationAccuracy = Double
public let kCLLocationAccuracyNearestTenMeters: CLLocationAccuracy = 10

public enum CLAuthorizationStatus: Int32, Sendable { case notDetermined, restricted, denied, authorizedAlways, authorizedWhenInUse }
public struct CLLocationCoordinate2D: Sendable {
    public var latitude: CLLocationDegrees
    public var longitude: CLLocationDegrees
}
open class CLLocation: NSObject, @unchecked Sendable {
    public var coordinate: CLLocationCoordinate2D { fatalError() }
    public var horizontalAccuracy: CLLocationAccuracy { fatalError() }
}
public struct CLError: Error {
    public enum Code: Int, Sendable { case locationUnknown, denied }
    public var code: Code { fatalError() }
}
public protocol CLLocationManagerDelegate: NSObjectProtocol {
    func locationManagerDidChangeAuthorization(_ manager: CLLocationManager)
    func locationManager(_ manager: CLLocationManager, didUpdateLocations locations: [CLLocation])
    func locationManager(_ manager: CLLocationManager, didFailWithError error: any Error)
}
open class CLLocationManager: NSObject {
    public override init() { fatalError() }
    public weak var delegate: (any CLLocationManagerDelegate)? {
        get { fatalError() }
        set { fatalError() }
    }
    public var desiredAccuracy: CLLocationAccuracy {
        get { fatalError() }
        set { fatalError() }
    }
    public var authorizationStatus: CLAuthorizationStatus { fatalError() }
    public func requestWhenInUseAuthorization() { fatalError() }
    public func requestLocation() { fatalError() }
}
