#include "tests/core/book/sample_firing.h"
#include "tests/core/watch/curve_maker.h"
#include "tests/support/notebook_on_disk.h"
#include "tests/support/page_words.h"
#include "tests/support/screens.h"
#include "ui/common/fitted_table.h"
#include "ui/past/curves_plot.h"
#include "ui/past/difference_model.h"
#include "ui/past/filter_fields.h"
#include "ui/past/firing_view.h"
#include "ui/past/firings_model.h"
#include "ui/past/laid_over_view.h"
#include "ui/past/meter_entry.h"
#include "ui/past/past_page.h"
#include "ui/theme/theme.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>

#include <set>

namespace ringhold::test {
namespace {

class PastPageTest : public testing::Test {
  protected:
    void start() {
        present(m_page);
        list().setFocus();
    }
    FittedTable& list() {
        for (auto* table : m_page.findChildren<FittedTable*>())
            if (table->accessibleName() == u"Firings")
                return *table;
        ADD_FAILURE() << "no list";
        return *m_page.findChild<FittedTable*>();
    }
    QLineEdit* filter() {
        for (auto* line : m_page.findChildren<QLineEdit*>())
            if (line->accessibleName().startsWith(u"Find firings"))
                return line;
        ADD_FAILURE() << "no filter";
        return nullptr;
    }
    FiringsModel& firings() { return *m_page.findChild<FiringsModel*>(); }
    DifferenceModel& differences() { return *m_page.findChild<DifferenceModel*>(); }
    std::string difference(int firing, int row) {
        return plainWords(differences().index(row, firing).data().toString());
    }
    std::string difference(int firing, Figure figure) {
        const auto row = differences().rowOf(figure);
        return row ? difference(firing, *row) : "no such row";
    }
    CurvesPlot& plot(const QString& inside) {
        auto* view = inside == u"one" ? static_cast<QWidget*>(m_page.findChild<FiringView*>())
                                      : m_page.findChild<LaidOverView*>();
        return *view->findChild<CurvesPlot*>();
    }
    QString title() { return m_page.findChild<FiringView*>()->findChild<QLabel*>()->text(); }
    QString warnings() { return warningsOn(m_page); }
    void alignAt(int index) {
        m_page.findChild<LaidOverView*>()->findChild<QComboBox*>()->setCurrentIndex(index);
    }

    NotebookOnDisk m_book;
    Theme m_theme;
    KilnId m_heron = m_book.addKiln("Heron");
    ProbeId m_probe = m_book.addProbe(m_heron, "T1");
    FiringId m_fern =
        m_book.addFiring(m_heron, {.title = "Frost fern", .began = noonOfMarch(1), .probe = m_probe});
    FiringId m_lichen = m_book.addFiring(m_heron, {.title = "Lichen",
                                                   .began = noonOfMarch(8),
                                                   .probe = m_probe,
                                                   .curve = crystalCurve(noonOfMarch(8), 1260, 1090)});
    PastPage m_page{m_book.notebook(), m_theme};
};

} // namespace

TEST_F(PastPageTest, ListsTheLatestFirstAndOpensIt) {
    start();
    ASSERT_EQ(list().model()->rowCount(), 2);
    EXPECT_EQ(title(), u"Lichen");
    const auto cell = [&](FiringColumn column) {
        return plainWords(list().model()->index(0, static_cast<int>(column)).data().toString());
    };
    EXPECT_EQ(cell(FiringColumn::began), "8 Mar 2026");
    EXPECT_EQ(cell(FiringColumn::kiln), "Heron");
    EXPECT_EQ(cell(FiringColumn::length), "17 h 00");
    EXPECT_EQ(cell(FiringColumn::peak), "1 260 °C");
    EXPECT_EQ(cell(FiringColumn::readings), "1021");
    press(Qt::Key_Down);
    QTest::qWait(150);
    EXPECT_EQ(title(), u"Frost fern");
}

TEST_F(PastPageTest, FindsByTitleKilnAndDate) {
    m_book.addFiring(m_book.addKiln("Smoke"), {.title = "Saggers", .began = noonOfMarch(9)});
    start();
    const std::pair<const char16_t*, int> cases[] = {{u"fern", 1},       {u"HERON", 2},   {u"8 Mar", 1},
                                                     {u"2026-03-09", 1}, {u"nothing", 0}, {u"", 3}};
    for (const auto& [text, count] : cases) {
        filter()->setText(QString::fromUtf16(text));
        EXPECT_EQ(list().model()->rowCount(), count) << QString::fromUtf16(text).toStdString();
    }
}

TEST_F(PastPageTest, FindsByFieldsAndByWordsInTheWare) {
    const KilnId smoke = m_book.addKiln("Smoke");
    const FiringId saggers = m_book.addFiring(smoke, {.title = "Saggers", .began = noonOfMarch(9)});
    const PieceId vase = m_book.addPiece(saggers, "moon jar", "ice 3");
    expectGood(m_book->writer().set({vase, Crystals::many, 40, 3, "", "A", "a halo at the foot"}));
    start();
    auto* words = filter();
    auto& fields = *m_page.findChild<FilterFields*>();
    const auto field = [&](const QString& hint) {
        for (auto* line : fields.findChildren<QLineEdit*>())
            if (line->placeholderText().startsWith(hint))
                return line;
        return fields.findChild<QLineEdit*>();
    };
    const auto found = [&] { return list().model()->rowCount(); };
    words->setText(u"halo"_qs);
    EXPECT_EQ(found(), 1);
    words->setText(u"moon"_qs);
    EXPECT_EQ(found(), 1);
    words->clear();
    field(u"glaze"_qs)->setText(u"ICE"_qs);
    EXPECT_EQ(found(), 1);
    words->setText(u"fern"_qs);
    EXPECT_EQ(found(), 0) << "all of it is asked for";
    words->clear();
    field(u"glaze"_qs)->clear();
    field(u"grade"_qs)->setText(u"A"_qs);
    EXPECT_EQ(found(), 1);
    field(u"grade"_qs)->clear();
    field(u"from"_qs)->setText(u"2026-03-08"_qs);
    EXPECT_EQ(found(), 2);
    field(u"to,"_qs)->setText(u"2026-03-08"_qs);
    EXPECT_EQ(found(), 1);
    field(u"to,"_qs)->setText(u"the eighth"_qs);
    field(u"to,"_qs)->setFocus();
    press(Qt::Key_Return);
    EXPECT_TRUE(warnings().contains(u"2026-03-01"));
    fields.clear();
    auto* kiln = fields.findChild<QComboBox*>();
    kiln->setCurrentText(u"Smoke"_qs);
    EXPECT_EQ(found(), 1);
    m_page.open(m_fern);
    EXPECT_EQ(found(), 3) << "what is asked to be opened is not hidden";
}

TEST_F(PastPageTest, TwoAreLaidOverByTicks) {
    start();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    press(Qt::Key_Space);
    ASSERT_EQ(differences().columnCount(), 2);
    EXPECT_EQ(m_page.findChild<QTabBar*>()->currentIndex(), 2);
    EXPECT_EQ(difference(0, Figure::peak_C), "1 260 °C");
    EXPECT_EQ(difference(1, Figure::peak_C), "1 270 °C");
    EXPECT_EQ(difference(0, Figure::coneHour), "down");
    EXPECT_EQ(difference(0, Figure::energy_kWh), "no such row") << "nobody read it";
    EXPECT_EQ(difference(0, Figure::lastClimb_C_per_h), "+ 60 °C/h");
    EXPECT_EQ(difference(0, Figure::growthHold_C).substr(0, 5), "1 090");
    EXPECT_TRUE(warnings().isEmpty()) << warnings().toStdString();
    ASSERT_TRUE(m_book->preferences().setUnit(TemperatureUnit::fahrenheit).ok());
    EXPECT_EQ(difference(1, Figure::peak_C), "2 318 °F");
    press(Qt::Key_Return);
    EXPECT_EQ(m_page.findChild<QTabBar*>()->currentIndex(), 0);
}

TEST_F(PastPageTest, TheCursorReadsAllCurvesFromTheSameHour) {
    start();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    press(Qt::Key_Space);
    alignAt(1);
    auto& laid = plot(u"laid"_qs);
    laid.setFocus();
    press(Qt::Key_Right);
    const auto words = plainWords(laid.cursorWords());
    EXPECT_NE(words.find("A "), std::string::npos) << words;
    EXPECT_NE(words.find("B "), std::string::npos) << words;
    EXPECT_NE(words.find(" h"), std::string::npos) << words;
    press(Qt::Key_Plus);
    press(Qt::Key_Home);
}

TEST_F(PastPageTest, TheWholeCurveIsInSight) {
    start();
    m_page.open(m_fern);
    const auto [first, last] = plot(u"one"_qs).inSight();
    EXPECT_DOUBLE_EQ(first, inSeconds(noonOfMarch(1).time_since_epoch()));
    EXPECT_DOUBLE_EQ(last, first + 17 * 3600);
    list().setFocus();
    press(Qt::Key_Space);
    press(Qt::Key_Up);
    press(Qt::Key_Space);
    alignAt(1);
    const auto [before, after] = plot(u"laid"_qs).inSight();
    EXPECT_NEAR(before, -650 / 60.0, 0.01); // the cone was down after 650 min
    EXPECT_NEAR(after, 17 - 650 / 60.0, 0.01);
}

TEST_F(PastPageTest, OtherProbesAreMarkedAsNotToBeCompared) {
    const ProbeId other = m_book.addProbe(m_heron, "T2");
    m_book.addFiring(m_heron, {.title = "After the change", .began = noonOfMarch(12), .probe = other});
    start();
    for (int i = 0; i < 3; ++i) {
        press(Qt::Key_Space);
        press(Qt::Key_Down);
    }
    EXPECT_TRUE(warnings().contains(u"B, C: not known to be by the same probe as A"))
        << warnings().toStdString();
    EXPECT_EQ(difference(1, DifferenceModel::probeRow), "T1");
    const int peak = *differences().rowOf(Figure::peak_C);
    EXPECT_TRUE(differences().headerData(peak, Qt::Vertical, Qt::DisplayRole).toString().contains(u'*'));
}

TEST_F(PastPageTest, MeterStandsTellEnergyAndCost) {
    Kiln kiln = good(m_book->reader().kilns()).at(0);
    kiln.pricePerKilowattHour = 0.5;
    expectGood(m_book->writer().alter(kiln));
    m_book.addPiece(m_fern, "bowl");
    m_book.addPiece(m_fern, "vase");
    start();
    m_page.open(m_fern);
    auto& entry = *m_page.findChild<MeterEntry*>();
    m_page.findChild<FiringView*>()->findChild<QTabWidget*>()->setCurrentWidget(&entry);
    const auto put = [](QLineEdit& field, const QString& text) {
        field.setFocus();
        field.selectAll();
        type(text);
        press(Qt::Key_Return);
    };
    put(entry.before(), u"many"_qs);
    EXPECT_TRUE(warnings().contains(u"number")) << warnings().toStdString();
    put(entry.before(), u"1000,5"_qs);
    put(entry.after(), u"1080.5"_qs);
    put(entry.after(), u"1070.5"_qs);
    EXPECT_TRUE(warnings().isEmpty()) << warnings().toStdString();
    const auto stands = good(m_book->reader().meterStands(m_fern));
    ASSERT_EQ(stands.size(), 3U) << "the wrong one stays readable";
    EXPECT_EQ(std::ranges::count(stands, true, &MeterStand::struck), 1);
    QStringList words;
    for (const auto* label : m_page.findChild<FiringView*>()->findChildren<QLabel*>())
        words << label->text();
    EXPECT_TRUE(words.join(u' ').contains(u"70 kWh by the meter, cost 35.00, 17.50 a piece"))
        << words.join(u' ').toStdString();
}

TEST_F(PastPageTest, KnownOffsetsAreTakenOffBeforeProbesAreCompared) {
    const ProbeId other = m_book.addProbe(m_heron, "T2");
    const FiringId after =
        m_book.addFiring(m_heron, {.title = "After the change", .began = noonOfMarch(12), .probe = other});
    const auto file = [&](FiringId firing, ProbeId probe, double offset_C) {
        expectGood(m_book->writer().file({firing, m_heron, probe, "middle shelf", noonOfMarch(12),
                                          TemperatureDifference::fromCelsius(offset_C),
                                          TemperatureDifference::fromCelsius(2)}));
    };
    file(m_fern, m_probe, 5);
    file(m_lichen, m_probe, 5);
    file(after, other, -10);
    start();
    for (int i = 0; i < 3; ++i) {
        press(Qt::Key_Space);
        press(Qt::Key_Down);
    }
    EXPECT_TRUE(warnings().isEmpty()) << warnings().toStdString();
    EXPECT_EQ(difference(0, Figure::peak_C), "1 280 °C ± 3");
    const int peak = *differences().rowOf(Figure::peak_C);
    EXPECT_TRUE(differences().headerData(peak, Qt::Vertical, Qt::FontRole).value<QFont>().bold());
    const int pieces = *differences().rowOf(Figure::nearPeak_min);
    EXPECT_FALSE(differences().headerData(pieces, Qt::Vertical, Qt::FontRole).value<QFont>().bold());
}

TEST_F(PastPageTest, AFiringThatCannotBeAlignedIsNamed) {
    Curve bisque = readEvery(curveOf({{0, 20}, {600, 1000}, {1300, 100}}), std::chrono::minutes(5));
    for (auto& point : bisque)
        point.at += noonOfMarch(13) - midnight;
    m_book.addFiring(m_heron,
                     {.title = "Bisque", .began = noonOfMarch(13), .probe = m_probe, .curve = bisque});
    start();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    press(Qt::Key_Space);
    alignAt(2);
    EXPECT_TRUE(warnings().contains(u"A: not drawn, as no growth hold was found"))
        << warnings().toStdString();
}

TEST_F(PastPageTest, AtMostTwentyAreLaidOver) {
    FiringsModel model(m_book->preferences());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    std::vector<FiringSummary> many(25);
    for (int i = 0; i < 25; ++i) {
        many[static_cast<std::size_t>(i)].id = FiringId{i + 1};
        many[static_cast<std::size_t>(i)].began = noonOfMarch(1 + i);
    }
    model.show(many);
    for (int row = 0; row < 25; ++row)
        EXPECT_EQ(model.setData(model.index(row, 0), int(Qt::Checked), Qt::CheckStateRole), row < 20);
    EXPECT_EQ(model.ticked().size(), 20U);
    model.show({many[24], many[0]});
    EXPECT_EQ(model.ticked().size(), 1U);
    model.untickAll();
    EXPECT_TRUE(model.ticked().empty());
}

TEST_F(PastPageTest, TwentyPensAreAllDifferent) {
    std::set<std::pair<QRgb, int>> pens;
    for (std::size_t i = 0; i < 20; ++i)
        pens.insert({layPen(i, m_theme).color().rgb(), static_cast<int>(layPen(i, m_theme).style())});
    EXPECT_EQ(pens.size(), 20U);
}

TEST_F(PastPageTest, ModelsKeepTheirContract) {
    using Mode = QAbstractItemModelTester::FailureReportingMode;
    const QAbstractItemModelTester listed(&firings(), Mode::Fatal);
    const QAbstractItemModelTester differing(&differences(), Mode::Fatal);
    start();
    press(Qt::Key_Space);
    press(Qt::Key_Down);
    press(Qt::Key_Space);
    Q_EMIT m_book->bookChanged();
    EXPECT_EQ(firings().ticked().size(), 2U);
}

TEST_F(PastPageTest, IsUsableByKeyboard) {
    start();
    expectUsableByKeyboard(m_page);
}

TEST_F(PastPageTest, AnEmptyBookHasAPageToo) {
    NotebookOnDisk empty;
    PastPage page(empty.notebook(), m_theme);
    present(page);
    EXPECT_EQ(page.findChild<FiringView*>()->findChild<QLabel*>()->text(), u"No firing is open");
}

TEST_F(PastPageTest, IsPictured) {
    start();
    m_page.open(m_fern);
    keepScreens(m_page, m_theme, u"past-one"_qs);
    press(Qt::Key_Space);
    press(Qt::Key_Up);
    press(Qt::Key_Space);
    alignAt(1);
    keepScreens(m_page, m_theme, u"past-laid"_qs);
    m_page.resize(924, 520);
    keepScreens(m_page, m_theme, u"past-laid-small"_qs);
}

} // namespace ringhold::test
