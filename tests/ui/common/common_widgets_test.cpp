#include "ui/common/caution_line.h"
#include "ui/common/choice_row.h"
#include "ui/common/key_hint.h"
#include "ui/common/words_on_page.h"

#include <QApplication>
#include <QFontInfo>
#include <QSignalSpy>
#include <QTest>
#include <QToolButton>
#include <gtest/gtest.h>

namespace ringhold {
namespace {

using Chosen = std::optional<int>;

class Row : public testing::Test {
  protected:
    Row()
        : m_row(QStringLiteral("Hour"), {{QStringLiteral("standing"), {}},
                                         {QStringLiteral("1"), QStringLiteral("1 o’clock")},
                                         {QStringLiteral("½"), QStringLiteral("1½ o’clock"), true}}) {
        QObject::connect(&m_row, &ChoiceRow::chosen, [this](Chosen index) { m_told.push_back(index); });
        m_row.show();
        QApplication::setActiveWindow(&m_row);
    }
    void click(int index) { QTest::mouseClick(m_row.button(index), Qt::LeftButton); }
    void key(Qt::Key key) { QTest::keyClick(QApplication::focusWidget(), key); }

    ChoiceRow m_row;
    std::vector<Chosen> m_told;
};

TEST_F(Row, ChoosesOneByClick) {
    click(1);
    click(0);
    EXPECT_EQ(m_told, (std::vector<Chosen>{1, 0}));
    EXPECT_FALSE(m_row.button(1)->isChecked());
    EXPECT_TRUE(m_row.button(0)->isChecked());
}

TEST_F(Row, KeepsOrClearsTheChosenOneWhenItIsClickedAgain) {
    click(1);
    click(1);
    EXPECT_EQ(m_row.current(), 1);
    EXPECT_TRUE(m_row.button(1)->isChecked());
    EXPECT_EQ(m_told.size(), 1u);
    m_row.setMayBeNone(true);
    click(1);
    EXPECT_EQ(m_row.current(), std::nullopt);
    EXPECT_EQ(m_told.back(), std::nullopt);
}

TEST_F(Row, IsGoneAlongByKeys) {
    m_row.button(0)->setFocus();
    key(Qt::Key_Right);
    EXPECT_EQ(m_row.current(), 0); // there was none
    key(Qt::Key_Right);
    key(Qt::Key_Right);
    key(Qt::Key_Right); // stays at the end
    EXPECT_EQ(m_row.current(), 2);
    key(Qt::Key_Home);
    EXPECT_EQ(m_row.current(), 0);
    key(Qt::Key_End);
    key(Qt::Key_Left);
    EXPECT_EQ(m_row.current(), 1);
    EXPECT_EQ(m_told, (std::vector<Chosen>{0, 1, 2, 0, 2, 1}));
    m_row.setMayBeNone(true);
    key(Qt::Key_Space);
    EXPECT_EQ(m_row.current(), std::nullopt);
}

TEST_F(Row, IsOneStopOfTheTabKeyAndSpeaks) {
    m_row.setCurrent(2);
    int stops = 0;
    for (int i = 0; i < m_row.count(); ++i) {
        stops += (m_row.button(i)->focusPolicy() & Qt::TabFocus) != 0;
        EXPECT_FALSE(m_row.button(i)->accessibleName().isEmpty());
    }
    EXPECT_EQ(stops, 1);
    EXPECT_EQ(m_row.button(2)->accessibleName(), QStringLiteral("1½ o’clock"));
    EXPECT_TRUE(m_told.empty()) << "setCurrent tells nobody";
}

TEST(KeyHints, AreClickedForTheirKey) {
    const Theme theme;
    KeyHint hint(theme, QKeySequence(Qt::ALT | Qt::Key_R), QStringLiteral("reading"));
    QSignalSpy clicked(&hint, &KeyHint::clicked);
    hint.resize(hint.sizeHint());
    hint.show();
    QTest::mouseClick(&hint, Qt::LeftButton);
    EXPECT_EQ(clicked.count(), 1);
    EXPECT_EQ(hint.accessibleName(), QStringLiteral("reading"));
    EXPECT_EQ(hint.accessibleDescription(), QStringLiteral("Alt R"));
}

TEST(CautionLines, EscapeWordsAndTakeTheThemesColours) {
    Theme theme;
    CautionLine line(theme, QStringLiteral("Eyes."), QStringLiteral("1 < 2"));
    EXPECT_TRUE(line.text().contains(theme.palette().warning.name()));
    EXPECT_TRUE(line.text().contains(QStringLiteral("1 &lt; 2")));
    theme.show(ThemeName::ember);
    EXPECT_TRUE(line.text().contains(theme.palette().warning.name()));
}

TEST(Headings, ChangeTheirFontWithTheirWordsAndTheScale) {
    Theme theme;
    Heading heading(theme, TextSize::title, QStringLiteral("Middle shelf"));
    EXPECT_EQ(QFontInfo(heading.font()).family(), QStringLiteral("Vollkorn"));
    theme.wear(*qApp);
    const double size = heading.font().pointSizeF();
    theme.setTextScale(1.5);
    EXPECT_DOUBLE_EQ(heading.font().pointSizeF(), 1.5 * size);
    heading.show();
    theme.show(ThemeName::ember); // whose style sheet must not undo it
    EXPECT_DOUBLE_EQ(heading.font().pointSizeF(), 1.5 * size);
    heading.say(QStringLiteral("Firing 23"));
    EXPECT_EQ(QFontInfo(heading.font()).family(), QStringLiteral("Lato"));
}

} // namespace
} // namespace ringhold
