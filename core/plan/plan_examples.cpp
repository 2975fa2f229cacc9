#include "core/plan/plan_examples.h"

namespace ringhold {

namespace {

using std::chrono::minutes;

constexpr Temperature C(double celsius) {
    return Temperature::fromCelsius(celsius);
}

constexpr Rate perHour(double celsius) {
    return Rate::fromCelsiusPerHour(celsius);
}

constexpr TemperatureDifference within(double celsius) {
    return TemperatureDifference::fromCelsius(celsius);
}

Plan ringed() {
    return {"Cone 9, long hold, three rings",
            {Climb{C(600), perHour(150)}, Climb{C(1100), perHour(200)},
             ConeWait{"9", perHour(60), C(1262), C(1285), minutes(40)}, Drop{C(1085), {}},
             Hold{C(1085), minutes(240), within(6)}, Rings{3, C(1040), minutes(9), C(1085), minutes(9)},
             Cool{C(600), {}}}};
}

Plan twoHolds() {
    return {"Cone 10, two holds",
            {Climb{C(650), perHour(180)}, Climb{C(1180), perHour(190)},
             ConeWait{"10", perHour(60), C(1290), C(1305), minutes(30)}, Drop{C(1110), {}},
             Hold{C(1110), minutes(75), within(5)}, Drop{C(1065), perHour(120)},
             Hold{C(1065), minutes(150), within(5)}, Cool{C(500), {}}}};
}

Plan slowFall() {
    return {"Cone 6, slow fall",
            {Climb{C(120), perHour(80)}, Hold{C(120), minutes(30), within(10)}, Climb{C(1080), perHour(190)},
             ConeWait{"6", perHour(60), C(1225), C(1245), minutes(45)}, Drop{C(1060), {}},
             Hold{C(1060), minutes(120), within(6)}, Drop{C(980), perHour(40)}, Cool{C(600), {}}}};
}

} // namespace

std::vector<ExamplePlan> examplePlans() {
    return {{ringed(), {"8", "9", "10"}}, {twoHolds(), {"9", "10", "11"}}, {slowFall(), {"5", "6", "7"}}};
}

} // namespace ringhold
