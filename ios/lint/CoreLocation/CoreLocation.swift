// Signatures only; each comment is the page under developer.apple.com/documentation that says so.
@_exported import Foundation

// corelocation/cllocationdegrees
public typealias CLLocationDegrees = Double
// corelocation/cllocationaccuracy
public typealias CLLocationAccuracy = Double
public let kCLLocationAccuracyNearestTenMeters: CLLocationAccuracy = 10

// corelocation/clauthorizationstatus
public enum CLAuthorizationStatus: Int32, Sendable { case notDetermined, restricted, denied, authorizedAlways, authorizedWhenInUse }
// corelocation/cllocationcoordinate2d
public struct CLLocationCoordinate2D: Sendable {
    public var latitude: CLLocationDegrees
    public var longitude: CLLocationDegrees
}
// corelocation/cllocation
open class CLLocation: NSObject {
    public var coordinate: CLLocationCoordinate2D { fatalError() }
    public var horizontalAccuracy: CLLocationAccuracy { fatalError() }
}
// corelocation/clerror
public struct CLError: Error {
    // corelocation/clerror/code
    public enum Code: Int, Sendable { case locationUnknown, denied }
    public var code: Code { fatalError() }
}
// corelocation/cllocationmanagerdelegate
public protocol CLLocationManagerDelegate: NSObjectProtocol {
    func locationManagerDidChangeAuthorization(_ manager: CLLocationManager)
    func locationManager(_ manager: CLLocationManager, didUpdateLocations locations: [CLLocation])
    func locationManager(_ manager: CLLocationManager, didFailWithError error: any Error)
}
// corelocation/cllocationmanager
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
    // corelocation/cllocationmanager/requestwheninuseauthorization()
    public func requestWhenInUseAuthorization() { fatalError() }
    // corelocation/cllocationmanager/requestlocation()
    public func requestLocation() { fatalError() }
}
