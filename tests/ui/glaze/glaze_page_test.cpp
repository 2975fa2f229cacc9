#include "core/book/glaze_cards.h"
#include "tests/core/book/sample_firing.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/screens.h"
#include "ui/common/entry_table.h"
#include "ui/common/words_on_page.h"
#include "ui/glaze/card_form.h"
#include "ui/glaze/cards_model.h"
#include "ui/glaze/glaze_page.h"
#include "ui/glaze/glaze_use.h"
#include "ui/glaze/lesson_plot.h"
#include "ui/glaze/lessons_pane.h"
#include "ui/glaze/recipe_model.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QLineEdit>
#include <QListView>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTest>

namespace ringhold::test {
namespace {

class GlazePageTest : public testing::Test {
  protected:
    void start() { present(m_page); }
    std::vector<GlazeCard> cards() { return good(GlazeCards(m_book->book()).all()); }
    GlazeCardId addCard(const char* name) {
        GlazeCard card;
        card.name = name;
        return good(GlazeCards(m_book->book()).add(card));
    }
    void click(const QString& words) {
        for (auto* found : m_page.findChildren<QPushButton*>())
            if (found->isVisible() && found->text().remove(u'&').contains(words))
                return QTest::mouseClick(found, Qt::LeftButton);
        ADD_FAILURE() << "no button " << words.toStdString();
    }
    QLineEdit& field(const QString& name) {
        for (auto* line : m_page.findChildren<QLineEdit*>())
            if (line->accessibleName() == name)
                return *line;
        ADD_FAILURE() << "no field " << name.toStdString();
        return *m_page.findChild<QLineEdit*>();
    }
    void write(const QString& name, const QString& text) {
        field(name).setFocus();
        field(name).selectAll();
        type(text);
        press(Qt::Key_Return);
    }
    bool says(const QString& words) {
        const auto labels = m_page.findChildren<QLabel*>();
        return std::ranges::any_of(
            labels, [&](const QLabel* l) { return l->isVisible() && l->text().contains(words); });
    }
    QTabWidget& tabs() { return *m_page.findChild<QTabWidget*>(); }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_kiln = m_book.addKiln("Heron");
    GlazePage m_page{m_book.notebook(), m_theme};
};

} // namespace

TEST_F(GlazePageTest, ACardIsWrittenFieldByFieldAndUndone) {
    start();
    EXPECT_TRUE(says(u"No glaze yet"_qs));
    click(u"New glaze"_qs);
    type(u"frost"_qs);
    press(Qt::Key_Return);
    write(u"Cone"_qs, u"10"_qs);
    write(u"Top"_qs, u"1265"_qs);
    write(u"Grows from"_qs, u"1040"_qs);
    write(u"Grows to"_qs, u"1090"_qs);
    write(u"Habits"_qs, u"1040 to 1060 bars; 1060-1090 fans"_qs);
    auto* notes = m_page.findChild<QPlainTextEdit*>();
    notes->setFocus();
    type(u"likes a slow drop"_qs);
    press(Qt::Key_Tab);
    ASSERT_EQ(cards().size(), 1U);
    const GlazeCard card = cards()[0];
    EXPECT_EQ(card.name, "frost");
    EXPECT_EQ(card.cone, "10");
    EXPECT_EQ(card.top, Temperature::fromCelsius(1265));
    EXPECT_EQ(card.growLow, Temperature::fromCelsius(1040));
    EXPECT_EQ(card.growHigh, Temperature::fromCelsius(1090));
    ASSERT_EQ(card.habits.size(), 2U);
    EXPECT_EQ(card.habits[1].word, "fans");
    EXPECT_EQ(card.notes, "likes a slow drop");
    click(u"Undo"_qs);
    click(u"Undo"_qs);
    EXPECT_TRUE(cards()[0].habits.empty());
    EXPECT_TRUE(field(u"Habits"_qs).text().isEmpty());
    click(u"Redo"_qs);
    EXPECT_EQ(cards()[0].habits.size(), 2U);
}

TEST_F(GlazePageTest, WhatMakesNoSenseIsSaidAndNotKept) {
    addCard("frost");
    start();
    write(u"Grows from"_qs, u"1090"_qs);
    write(u"Grows to"_qs, u"1040"_qs);
    EXPECT_TRUE(says(u"from the lower temperature to the higher"_qs));
    EXPECT_FALSE(cards()[0].growHigh);
    write(u"Top"_qs, u"hot"_qs);
    EXPECT_TRUE(says(u"no temperature"_qs));
    write(u"Habits"_qs, u"bars everywhere"_qs);
    EXPECT_TRUE(says(u"two temperatures and a word"_qs));
    write(u"Name"_qs, u" "_qs);
    EXPECT_TRUE(says(u"A glaze has a name"_qs));
    EXPECT_EQ(cards()[0].name, "frost");
}

TEST_F(GlazePageTest, ANameThatIsTakenIsRefused) {
    addCard("frost");
    addCard("lichen");
    start();
    m_page.open(u"Lichen"_qs);
    write(u"Name"_qs, u"Frost"_qs);
    EXPECT_EQ(cards()[1].name, "lichen");
    EXPECT_FALSE(m_page.cards().undoStack().canUndo());
}

TEST_F(GlazePageTest, TemperaturesAreWrittenAndReadInTheChosenUnit) {
    addCard("frost");
    expectGood(m_book->preferences().setUnit(TemperatureUnit::fahrenheit));
    start();
    write(u"Top"_qs, u"2300"_qs);
    EXPECT_NEAR(cards()[0].top->celsius(), 1260, 0.01);
    write(u"Grows from"_qs, u"1040 C"_qs);
    EXPECT_NEAR(cards()[0].growLow->celsius(), 1040, 0.01);
    EXPECT_EQ(field(u"Grows from"_qs).text(), u"1904"_qs);
}

TEST_F(GlazePageTest, ARecipeIsTypedWithEnterAlone) {
    addCard("frost");
    start();
    tabs().setCurrentIndex(1);
    auto& table = *m_page.findChild<EntryTable*>();
    table.setFocus();
    table.setCurrentIndex(table.model()->index(0, 0));
    type(u"zinc"_qs); // completed
    press(Qt::Key_Return);
    type(u"25"_qs);
    press(Qt::Key_Return);
    press(Qt::Key_Return); // no addition
    press(Qt::Key_Return); // its formula is there
    ASSERT_EQ(cards()[0].recipe.size(), 1U);
    EXPECT_EQ(cards()[0].recipe[0].material, "zinc oxide");
    EXPECT_EQ(cards()[0].recipe[0].percent, 25);
    EXPECT_EQ(cards()[0].recipe[0].formula, "ZnO");
    EXPECT_TRUE(says(u"mol ZnO"_qs));
}

TEST_F(GlazePageTest, CardsAreMadeForGlazesThatWereFired) {
    const FiringId firing = m_book.addFiring(m_kiln, {.began = noonOfMarch(1)});
    m_book.addPiece(firing, "vase", "frost + lichen");
    m_book.addPiece(firing, "bowl", "Frost");
    start();
    click(u"Cards for glazes fired"_qs);
    ASSERT_EQ(cards().size(), 2U);
    EXPECT_EQ(cards()[1].name, "lichen");
    click(u"Cards for glazes fired"_qs);
    EXPECT_TRUE(says(u"has its card"_qs));
    click(u"Take away"_qs);
    EXPECT_EQ(cards().size(), 1U);
    click(u"Undo"_qs);
    EXPECT_EQ(cards().size(), 2U);
}

TEST_F(GlazePageTest, FiringsThatUsedItAreListedAndOpened) {
    addCard("frost");
    const FiringId one = m_book.addFiring(m_kiln, {.title = "First", .began = noonOfMarch(1)});
    const FiringId two = m_book.addFiring(m_kiln, {.title = "Second", .began = noonOfMarch(5)});
    m_book.addPiece(one, "vase", "frost");
    m_book.addPiece(two, "bowl", "frosty"); // another glaze
    const PieceId jug = m_book.addPiece(two, "jug", "lichen + frost");
    expectGood(m_book->writer().set({jug, Crystals::many, 40, 3, "", "A", ""}));
    start();
    tabs().setCurrentIndex(2);
    auto* model = m_page.findChild<GlazeUseModel*>();
    const QAbstractItemModelTester tester(model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    ASSERT_EQ(model->rowCount(), 2);
    EXPECT_EQ(model->index(0, int(GlazeUseColumn::firing)).data(), u"Second"_qs);
    EXPECT_EQ(model->index(0, int(GlazeUseColumn::pieces)).data(), u"1"_qs);
    EXPECT_EQ(model->index(0, int(GlazeUseColumn::largest)).data(), u"40 mm"_qs);
    EXPECT_EQ(model->index(0, int(GlazeUseColumn::grades)).data(), u"A"_qs);
    QSignalSpy wanted(&m_page, &GlazePage::firingWanted);
    QTableView* table = nullptr;
    for (auto* found : m_page.findChildren<QTableView*>())
        if (found->model() == model)
            table = found;
    ASSERT_TRUE(table);
    table->setFocus();
    table->setCurrentIndex(model->index(1, 0));
    press(Qt::Key_Return);
    ASSERT_EQ(wanted.count(), 1);
    EXPECT_EQ(wanted[0][0].toLongLong(), static_cast<qlonglong>(one));
}

TEST_F(GlazePageTest, FewPiecesAreNotEnoughToSay) {
    addCard("frost");
    const ProbeId probe = m_book.addProbe(m_kiln, "back wall");
    const FiringId one = m_book.addFiring(m_kiln, {.began = noonOfMarch(1), .probe = probe});
    const PieceId vase = m_book.addPiece(one, "vase", "frost");
    expectGood(m_book->writer().set({vase, Crystals::many, 40, 3, "", "A", ""}));
    start();
    tabs().setCurrentIndex(3);
    EXPECT_TRUE(says(u"Not enough to say (1 piece from 1 firing)"_qs));
    EXPECT_TRUE(says(u"between which temperatures"_qs));
}

TEST_F(GlazePageTest, IsUsableByKeyboard) {
    addCard("frost");
    start();
    expectUsableByKeyboard(m_page);
}

TEST_F(GlazePageTest, IsPictured) {
    GlazeCard card;
    card.name = "frost";
    card.cone = "10";
    card.top = Temperature::fromCelsius(1265);
    card.running = "much; needs a deep catcher";
    card.growLow = Temperature::fromCelsius(1040);
    card.growHigh = Temperature::fromCelsius(1095);
    card.colourTemperatures = "blue below 1060, straw above";
    card.habits = {{Temperature::fromCelsius(1040), Temperature::fromCelsius(1060), "bars"},
                   {Temperature::fromCelsius(1060), Temperature::fromCelsius(1095), "fans"}};
    card.application = "1.5 mm at the rim, thinner below";
    const auto line = [&](const char* material, double percent, bool top = false) {
        RecipeLine made;
        made.material = material;
        made.percent = percent;
        made.formula = formulaOf(QString::fromUtf8(material)).toStdString();
        made.addition = top;
        card.recipe.push_back(made);
    };
    line("our frit", 50);
    line("zinc oxide", 27);
    line("silica", 23);
    line("cobalt carbonate", 0.5, true);
    (void)good(GlazeCards(m_book->book()).add(card));
    addCard("lichen");
    const ProbeId probe = m_book.addProbe(m_kiln, "back wall");
    for (int i = 0; i < 7; ++i) {
        const FiringId firing =
            m_book.addFiring(m_kiln, {.title = "Frost " + std::to_string(i + 1),
                                      .began = noonOfMarch(1 + 2 * i),
                                      .probe = probe,
                                      .curve = crystalCurve(noonOfMarch(1 + 2 * i), 1262 + i % 3,
                                                            1050 + 7 * i, std::chrono::minutes(5))});
        for (int p = 0; p < 3; ++p) {
            const PieceId piece = m_book.addPiece(firing, "vase " + std::to_string(p), "frost");
            Outcome outcome;
            outcome.piece = piece;
            outcome.crystals = Crystals::many;
            outcome.largest_mm = 22 + 3 * i + 2 * p;
            outcome.grade = p ? "A" : "B";
            expectGood(m_book->writer().set(outcome));
        }
    }
    start();
    for (const auto& [width, height, suffix] : {std::tuple{1180, 640, ""}, std::tuple{924, 520, "-small"}})
        for (int tab = 0; tab < tabs().count(); ++tab) {
            m_page.resize(width, height);
            tabs().setCurrentIndex(tab);
            QApplication::processEvents();
            keepScreens(m_page, m_theme, u"glaze-%1%2"_qs.arg(tab).arg(QLatin1String(suffix)));
        }
    EXPECT_EQ(m_page.findChild<LessonPlot*>()->points(), 21);
}

} // namespace ringhold::test
