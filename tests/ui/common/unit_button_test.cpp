#include "tests/support/notebook_on_disk.h"
#include "ui/common/unit_button.h"

#include <QTest>

namespace ringhold::test {

TEST(UnitButtonTest, TurnsTheDegreesOfTheWholeBookAndBack) {
    NotebookOnDisk book;
    auto& preferences = book->preferences();
    UnitButton button(preferences);
    present(button, 120, 40);
    EXPECT_EQ(button.text(), u"in °F");
    QTest::mouseClick(&button, Qt::LeftButton);
    EXPECT_EQ(preferences.unit(), TemperatureUnit::fahrenheit);
    EXPECT_EQ(button.text(), u"in °C");
    EXPECT_EQ(button.accessibleName(), u"Show degrees Celsius");
    QTest::keyClick(&button, Qt::Key_Space);
    EXPECT_EQ(preferences.unit(), TemperatureUnit::celsius);
}

} // namespace ringhold::test
