#include "tests/ui/plan/plan_book.h"
#include "ui/plan/plan_card.h"
#include "ui/plan/plan_card_window.h"

#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QPointer>
#include <QProcess>
#include <QPushButton>
#include <QTest>

namespace ringhold {
namespace {

/// What a reader of the file takes out of it, with plain blanks.
QString run(const QString& program, const QStringList& arguments) {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program.toStdString();
    return QString::fromUtf8(process.readAllStandardOutput()).replace(QChar(0x202f), QLatin1Char(' '));
}

class PlanCardPaper : public testing::Test {
  protected:
    PlanCardPaper() {
        const KilnId heron = m_book.addHeron();
        m_basis.kiln = *m_book.notebook().reader().kilnNamed("Heron").value();
        m_basis.offset = offsetChoices(m_book.notebook().reader(), heron)->front();
        m_basis.offset.prior = {TemperatureDifference::fromCelsius(7), TemperatureDifference::fromCelsius(2),
                                3};
    }
    PlanCardWords words(CardCorrection correction = CardCorrection::coneWaits) const {
        const auto planned = planCurve(m_plan, contextOf(m_basis, m_plan));
        return planCardWords(
            {planCard(m_plan, m_basis.offset.prior, correction, &planned), m_basis, m_book.clockNow()},
            m_preferences);
    }
    QString file(const char* name) const { return QString::fromStdString((m_book.folder / name).string()); }
    QString textOf(const PlanCardWords& card, const QPageSize& size = QPageSize(QPageSize::A4)) const {
        const QString pdf = file("card.pdf");
        EXPECT_TRUE(writePlanCard(pdf.toStdString(), card, size));
        return run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
    }

    test::PlanBook m_book;
    Preferences& m_preferences = m_book.preferences();
    Plan m_plan = examplePlans().front().plan;
    PlanBasis m_basis = typicalBasis();
};

TEST_F(PlanCardPaper, HasASegmentForEachRow) {
    const auto card = words();
    ASSERT_EQ(card.rows.size(), 10u); // climb, climb, cone wait, fall and hold, three rings of two
    EXPECT_EQ(card.rows[0].rate, QStringLiteral("150"));
    EXPECT_EQ(card.rows[0].set, QStringLiteral("600"));
    EXPECT_EQ(card.rows[2].set, QStringLiteral("1\u202f269"));
    EXPECT_EQ(card.rows[2].dwell, QStringLiteral("40 min"));
    EXPECT_TRUE(card.rows[2].byHand);
    EXPECT_EQ(card.rows[2].remark, QStringLiteral("until cone 9 is down: step on by hand"));
    EXPECT_EQ(card.rows[3].rate, QStringLiteral("full"));
    EXPECT_EQ(card.rows[3].dwell, QStringLiteral("4 h 00"));
    EXPECT_EQ(card.rows[4].remark, QStringLiteral("ring 1, low"));
    EXPECT_EQ(card.rows[9].remark, QStringLiteral("ring 3, high"));
    EXPECT_EQ(words(CardCorrection::none).rows[2].set, QStringLiteral("1\u202f262"));
}

TEST_F(PlanCardPaper, SaysWhatToDoByHandAndHowSureTheCorrectionIs) {
    const auto card = words();
    ASSERT_EQ(card.byHand.size(), 1u);
    EXPECT_EQ(card.byHand[0].act,
              QStringLiteral("When cone 9 is down, step on from segment 3 to segment 4 at once."));
    EXPECT_TRUE(card.byHand[0].more.contains(QStringLiteral("Never above 1\u202f285\u202f°C")));
    const QString offset = card.offset.join(QLatin1Char(' ')).replace(QChar(0x202f), QLatin1Char(' '));
    EXPECT_TRUE(offset.contains(QStringLiteral("reads 7 °C high (+ 4 °C to + 10 °C), from 3 firings")));
    EXPECT_TRUE(offset.contains(
        QStringLiteral("Segment 3: the plan's 1 262 °C, corrected by + 7 °C, is 1 269 °C (1 266 to 1 272).")))
        << offset.toStdString();
}

TEST_F(PlanCardPaper, SpeaksFahrenheitWhenAsked) {
    ASSERT_TRUE(m_preferences.setUnit(TemperatureUnit::fahrenheit));
    const auto card = words();
    EXPECT_EQ(card.rows[0].rate, QStringLiteral("270"));
    EXPECT_EQ(card.rows[0].set, QStringLiteral("1\u202f112"));
    EXPECT_EQ(card.rows[2].set, QStringLiteral("2\u202f316")); // 1269 °C
    EXPECT_TRUE(card.heads[2].contains(QStringLiteral("°F")));
}

TEST_F(PlanCardPaper, CautionsByTheKilnsFuel) {
    EXPECT_FALSE(words().cautions.join(QLatin1Char(' ')).contains(QStringLiteral("Carbon monoxide")));
    m_basis.kiln->fuel = Fuel::gas;
    const QString cautions = words().cautions.join(QLatin1Char(' '));
    EXPECT_TRUE(cautions.contains(QStringLiteral("Carbon monoxide")));
    EXPECT_TRUE(cautions.contains(QStringLiteral("no safety device")));
}

TEST_F(PlanCardPaper, GivesAllItsTextBackFromThePdf) {
    const auto card = words();
    const QString text = textOf(card).simplified();
    for (const auto& wanted :
         {"Cone 9, long hold, three rings", "Heron", "probe control", "1 March 2026", "1 269", "40 min",
          "4 h 00", "full: as fast as the kiln goes", "step on from segment 3 to segment 4", "+ 7 °C",
          "set point, °C", "rate, °C/h", "no safety device", "infrared-rated"})
        EXPECT_TRUE(text.contains(QString::fromUtf8(wanted))) << wanted << "\n" << text.toStdString();
}

TEST_F(PlanCardPaper, EmbedsItsFontsAndHasNoPictures) {
    textOf(words());
    const QString fonts = run(QStringLiteral("pdffonts"), {file("card.pdf")});
    const auto lines = fonts.split(QLatin1Char('\n'), Qt::SkipEmptyParts).mid(2);
    ASSERT_FALSE(lines.isEmpty());
    for (const auto& line : lines)
        EXPECT_TRUE(line.contains(QStringLiteral(" yes "))) << line.toStdString();
    const QString pictures = run(QStringLiteral("pdfimages"), {QStringLiteral("-list"), file("card.pdf")});
    EXPECT_EQ(pictures.split(QLatin1Char('\n'), Qt::SkipEmptyParts).size(), 2); // its heading alone
}

struct Paper {
    QPageSize::PageSizeId size;
    const char* words;
};

TEST_F(PlanCardPaper, FitsAnExampleOnOnePageOfEitherSize) {
    for (const auto& [size, named] : {Paper{QPageSize::A4, "A4"}, Paper{QPageSize::Letter, "letter"}}) {
        for (const auto& example : examplePlans()) {
            m_plan = example.plan;
            textOf(words(), QPageSize(size));
            const QString info = run(QStringLiteral("pdfinfo"), {file("card.pdf")});
            EXPECT_TRUE(info.contains(QString::fromUtf8(named))) << info.toStdString();
            EXPECT_TRUE(info.simplified().contains(QStringLiteral("Pages: 1 "))) << info.toStdString();
        }
    }
}

TEST_F(PlanCardPaper, GoesOnOnAnotherPageUnderTheSameHeads) {
    std::get<Rings>(m_plan.steps[5]).count = 15;
    const auto card = words();
    const QString text = textOf(card);
    EXPECT_EQ(text.count(QStringLiteral("set point, °C")), text.count(QLatin1Char('\f')));
    EXPECT_GT(text.count(QLatin1Char('\f')), 1);
    EXPECT_TRUE(text.contains(QStringLiteral("ring 1, low")));
    EXPECT_TRUE(text.contains(QStringLiteral("ring 15, high")));
}

TEST_F(PlanCardPaper, SaysWhenItCannotBeWritten) {
    const auto status = writePlanCard("/nowhere/at/all.pdf", words(), QPageSize(QPageSize::A4));
    ASSERT_FALSE(status);
    EXPECT_FALSE(status.error().text().empty());
}

TEST_F(PlanCardPaper, IsChosenAndWrittenInItsWindow) {
    QPointer<PlanCardWindow> window = new PlanCardWindow(m_plan, m_basis, m_book.clockNow(), m_preferences);
    window->show();
    EXPECT_FALSE(window->isModal());
    EXPECT_EQ(window->words().rows[2].set, QStringLiteral("1\u202f269"));
    auto* correction = window->findChild<QComboBox*>(QStringLiteral("cardCorrection"));
    correction->setFocus();
    QTest::keyClick(correction, Qt::Key_End);
    EXPECT_EQ(window->words().rows[2].set, QStringLiteral("1\u202f262"));
    auto* said = window->findChild<QLabel*>(QStringLiteral("cardSaid"));
    window->writePdf(file("window.pdf"));
    EXPECT_TRUE(said->text().startsWith(QStringLiteral("Written to ")));
    EXPECT_TRUE(run(QStringLiteral("pdftotext"), {file("window.pdf"), QStringLiteral("-")})
                    .contains(QStringLiteral("1 262")));
    window->writePdf(QStringLiteral("/nowhere/at/all.pdf"));
    EXPECT_TRUE(said->text().startsWith(QStringLiteral("Not written: ")));
    if (const QString folder = qEnvironmentVariable("RINGHOLD_SCREENS"); !folder.isEmpty())
        window->grab().save(folder + QStringLiteral("/plan-card-window.png"));
    window->close();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    EXPECT_FALSE(window);
}

} // namespace
} // namespace ringhold
