// The widgets' promises: keyboard, names for screen readers, plain text, messages at the field,
// and room for the text at twice the size.
#include "tests/support/registry.h"
#include "views/charts/bar_meter.h"
#include "views/charts/chart_view.h"
#include "views/charts/sparkline.h"
#include "views/theme/icons.h"
#include "views/theme/number_style.h"
#include "views/theme/style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/column_scroll.h"
#include "views/widgets/empty_state.h"
#include "views/widgets/field_row.h"
#include "views/widgets/fitting_stack.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/numeral.h"
#include "views/widgets/page_header.h"
#include "views/widgets/page_rail.h"
#include "views/widgets/search_field.h"
#include "views/widgets/sentence_label.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/tap_button.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QPainter>
#include <QPushButton>
#include <QSignalSpy>
#include <QSvgRenderer>
#include <QTemporaryDir>
#include <QTest>
#include <QVBoxLayout>
#include <QtCharts/QValueAxis>

#include <memory>

using namespace rickyard::views;

namespace {

// Every widget of the library once, with text in it.
std::unique_ptr<QWidget> sampler()
{
    auto window = std::make_unique<QWidget>();
    auto *column = new QVBoxLayout(window.get());
    auto *rail = new PageRail;
    rail->addPage(QStringLiteral("ahead"), QStringLiteral("Ahead"));
    rail->addPage(QStringLiteral("wood"), QStringLiteral("Wood"));
    rail->addPage(QStringLiteral("fire"), QStringLiteral("Fire"));
    column->addWidget(rail);
    auto *header = new PageHeader(QStringLiteral("Wood"), QStringLiteral("<b>3</b> ricks"));
    auto *add = new QPushButton(QStringLiteral("Log a delivery"));
    add->setAccessibleName(add->text());
    header->addAction(add);
    column->addWidget(header);
    auto *card = new Card(QStringLiteral("Dry wood"));
    card->body()->addWidget(new Numeral(QStringLiteral("-1.4"), QStringLiteral("cords"),
                                        QStringLiteral("dry on hand")));
    auto *sentence = new SentenceLabel;
    sentence->setParts({{QStringLiteral("Order by "), false, Role::Ink},
                        {QStringLiteral("Friday 9 May"), true, Role::Act},
                        {QStringLiteral("."), false, Role::Ink}});
    card->body()->addWidget(sentence);
    card->body()->addWidget(new StatusPill(Role::Watch, QStringLiteral("Falls due")));
    column->addWidget(card);
    auto *row = new FieldRow(QStringLiteral("Weight"), new UnitLineEdit(QStringLiteral("lb")));
    row->setHelp(QStringLiteral("As it lies, bark on."));
    column->addWidget(row);
    column->addWidget(new SearchField(QStringLiteral("Find a lot")));
    auto *empty = new EmptyState(QStringLiteral("wood"), QStringLiteral("No wood yet"),
                                 QStringLiteral("Log the first delivery."));
    empty->setAction(QStringLiteral("Log a delivery"));
    column->addWidget(empty);
    auto *notice = new NoticeBar;
    column->addWidget(notice);
    notice->showProblem(QStringLiteral("The file is <i>newer</i>."),
                        {{QStringLiteral("Open another"), {}}});
    column->addWidget(new CautionNote(QStringLiteral("Ash keeps fire for days.")));
    auto *tap = new TapButton(QStringLiteral("Feed one split"));
    tap->setSubLabel(QStringLiteral("last 24 min ago"));
    tap->setKey(QKeySequence(Qt::Key_F));
    column->addWidget(tap);
    auto *meter = new BarMeter;
    meter->setValues(1.4, 2.1, QStringLiteral("1.4 cords"), QStringLiteral("needs 2.1"));
    column->addWidget(meter);
    column->addWidget(new Sparkline(QStringLiteral("Use")));
    column->addWidget(new ChartView(QStringLiteral("Use against length")));
    return window;
}

} // namespace

class TstWidgets : public QObject
{
    Q_OBJECT

private slots:
    void init() { ThemeHub::apply(*qApp, Mode::Light, 1.0); }
    void cleanupTestCase() { ThemeHub::apply(*qApp, Mode::Light, 1.0); }

    void textIsReadableInEveryMode();
    void aStackIsAsTallAsItsPage();
    void aColumnAsksForItsWidth();
    void darknessComesFromThePalette();
    void everythingGrowsWithTheText();
    void nightScopeReachesItsChildrenOnly();
    void iconsAreOursAndDraw();
    void numbersAreWrittenProperly();
    void railMovesByKeyboard();
    void railBadgeIsSaid();
    void everyInteractiveWidgetHasAName();
    void labelsArePlainText();
    void fieldSaysWhatIsWrongAndKeepsTheInput();
    void focusIsVisible();
    void textFitsAtTwiceTheSize();
    void sentenceWrapsWithoutLosingWords();
    void pillNeverStandsWithoutAWord();
    void noticeRunsItsActionsAndGoesAway();
    void cautionSaysWhoDecides();
    void tapButtonAnswersItsKey();
    void flowBreaksIntoRows();
    void searchEmptiesOnEscape();
    void chartAnswersTheKeyboardAndExports();
    void sparklineSaysItsRange();
};

// WCAG 2.1, success criterion 1.4.3: 4.5 to 1 for text; 1.4.11: 3 to 1 for what shows focus and
// for graphical objects.
void TstWidgets::textIsReadableInEveryMode()
{
    // The formula itself: the standard's extremes are 21 and 1.
    QCOMPARE(qRound(contrastRatio(Qt::black, Qt::white) * 100), 2100);
    QCOMPARE(contrastRatio(Qt::white, Qt::white), 1.0);
    for (const Mode mode : {Mode::Light, Mode::Dark, Mode::Night}) {
        const Theme look = Theme::make(mode);
        for (const Role ground : {Role::Ground, Role::Surface, Role::SurfaceRaised, Role::Field,
                                  Role::Selection, Role::Hover}) {
            for (const Role ink : {Role::Ink, Role::InkMuted}) {
                const double ratio = contrastRatio(look.color(ink), look.color(ground));
                QVERIFY2(ratio >= 4.5, qPrintable(QStringLiteral("mode %1 ink %2 on %3: %4")
                                                      .arg(int(mode))
                                                      .arg(int(ink))
                                                      .arg(int(ground))
                                                      .arg(ratio)));
            }
        }
        QVERIFY(contrastRatio(look.color(Role::AccentInk), look.color(Role::Accent)) >= 4.5);
        for (const Role role : {Role::Good, Role::Watch, Role::Act, Role::Info}) {
            QVERIFY(contrastRatio(look.color(role), look.color(Role::Surface)) >= 4.5);
            QVERIFY(contrastRatio(look.color(role), look.soft(role)) >= 4.5);
            QVERIFY(contrastRatio(look.color(Role::Ink), look.soft(role)) >= 4.5);
        }
        QVERIFY(contrastRatio(look.color(Role::Focus), look.color(Role::Ground)) >= 3.0);
        for (int i = 0; i < 6; ++i)
            QVERIFY(contrastRatio(look.color(Theme::chartRole(i)), look.color(Role::Surface)) >=
                    3.0);
    }
}

void TstWidgets::darknessComesFromThePalette()
{
    QVERIFY(!isDarkPalette(Theme::make(Mode::Light).palette()));
    QVERIFY(isDarkPalette(Theme::make(Mode::Dark).palette()));
    ThemeHub &hub = ThemeHub::apply(*qApp, Mode::Dark);
    QVERIFY(hub.theme().isDark());
    QVERIFY(isDarkPalette(QApplication::palette()));
    ThemeHub::apply(*qApp, Mode::Light);
    QVERIFY(!hub.theme().isDark());
}

void TstWidgets::everythingGrowsWithTheText()
{
    const auto window = sampler();
    const Theme before = ThemeHub::of()->theme();
    const int label = window->findChild<TextLabel *>()->fontMetrics().height();
    ThemeHub::apply(*qApp, Mode::Light, 2.0);
    const Theme &after = ThemeHub::of()->theme();
    QVERIFY(qAbs(after.scale() / before.scale() - 2.0) < 0.01);
    QVERIFY(after.space(4) >= 2 * before.space(4) - 1);
    QVERIFY(after.controlHeight() >= 2 * before.controlHeight() - 1);
    QVERIFY(window->findChild<TextLabel *>()->fontMetrics().height() >= 2 * label - 3);
}

void TstWidgets::nightScopeReachesItsChildrenOnly()
{
    QWidget page;
    QWidget other;
    auto *button = new QPushButton(QStringLiteral("Feed"), &page);
    ThemeHub::of()->setScope(&page, Mode::Night);
    QCOMPARE(theme(button).mode(), Mode::Night);
    QCOMPARE(theme(&other).mode(), Mode::Light);
    QCOMPARE(button->palette().color(QPalette::WindowText),
             Theme::make(Mode::Night).color(Role::Ink));
    // Made while it stood nowhere, as pages do that are built when they are first opened.
    auto *label = new TextLabel(QStringLiteral("Late"), TextStyle::Body);
    label->setParent(&page);
    page.show();
    label->show();
    QCOMPARE(label->palette().color(QPalette::WindowText),
             Theme::make(Mode::Night).color(Role::Ink));
    ThemeHub::of()->setScope(&page, Mode::System);
    QCOMPARE(theme(button).mode(), Mode::Light);
}

void TstWidgets::iconsAreOursAndDraw()
{
    const QStringList files =
        QDir(QStringLiteral(":/rickyard/resources/icons")).entryList({QStringLiteral("*.svg")});
    QVERIFY(files.size() >= 40);
    for (const QString &file : files) {
        const QString path = QStringLiteral(":/rickyard/resources/icons/%1").arg(file);
        QVERIFY2(QSvgRenderer(path).isValid(), qPrintable(file));
        const QString name = QFileInfo(file).completeBaseName();
        const QColor tint(10, 200, 30);
        const QImage image = iconPixmap(name, tint, 24, 2.0).toImage();
        QCOMPARE(image.width(), 48);
        int inked = 0;
        int wrong = 0;
        for (int y = 0; y < image.height(); ++y) {
            for (int x = 0; x < image.width(); ++x) {
                const QColor pixel = image.pixelColor(x, y);
                inked += pixel.alpha() > 128 ? 1 : 0;
                wrong += pixel.alpha() == 255 && pixel.rgb() != tint.rgb() ? 1 : 0;
            }
        }
        QVERIFY2(inked > 20, qPrintable(file));
        QCOMPARE(wrong, 0);
    }
    QVERIFY(icon(QStringLiteral("no-such-drawing")).isNull());
}

void TstWidgets::numbersAreWrittenProperly()
{
    QCOMPARE(trueMinus(QStringLiteral("-3.5")), QStringLiteral("\u22123.5"));
    QCOMPARE(trueMinus(QStringLiteral("3-5 pm, well-dried")), QStringLiteral("3-5 pm, well-dried"));
    QCOMPARE(withUnit(QStringLiteral("12"), QStringLiteral("lb")), QStringLiteral("12\u2009lb"));
    QCOMPARE(rangeText(QStringLiteral("10"), QStringLiteral("14")), QStringLiteral("10\u201314"));
    QCOMPARE(rangeText(QStringLiteral("-3"), QStringLiteral("-1")),
             QStringLiteral("\u22123\u2009\u2013\u2009\u22121"));
    // Columns of figures stand under each other: all digits are equally wide.
    const QFontMetricsF metrics(theme().font(TextStyle::Figures));
    for (char16_t digit = u'0'; digit <= u'9'; ++digit)
        QCOMPARE(metrics.horizontalAdvance(QChar(digit)), metrics.horizontalAdvance(u'0'));
}

void TstWidgets::railMovesByKeyboard()
{
    PageRail rail;
    for (const char *name : {"ahead", "wood", "fire", "pits"})
        rail.addPage(QLatin1String(name), QLatin1String(name));
    rail.show();
    QVERIFY(QTest::qWaitForWindowActive(&rail));
    QSignalSpy spy(&rail, &PageRail::currentChanged);
    rail.button(0)->setFocus();
    QTest::keyClick(rail.button(0), Qt::Key_Down);
    QCOMPARE(rail.current(), 1);
    QVERIFY(rail.button(1)->hasFocus());
    QTest::keyClick(rail.button(1), Qt::Key_End);
    QCOMPARE(rail.current(), 3);
    QTest::keyClick(rail.button(3), Qt::Key_Down);
    QCOMPARE(rail.current(), 3);
    QTest::keyClick(rail.button(3), Qt::Key_Home);
    QCOMPARE(rail.current(), 0);
    QCOMPARE(spy.count(), 3);
    // Exclusive, and a second click leaves the page current.
    QTest::mouseClick(rail.button(2), Qt::LeftButton);
    QTest::mouseClick(rail.button(2), Qt::LeftButton);
    int checked = 0;
    for (int i = 0; i < rail.count(); ++i)
        checked += rail.button(i)->isChecked() ? 1 : 0;
    QCOMPARE(checked, 1);
    QVERIFY(rail.button(2)->isChecked());
}

void TstWidgets::railBadgeIsSaid()
{
    PageRail rail;
    rail.addPage(QStringLiteral("upkeep"), QStringLiteral("Upkeep"));
    rail.setBadge(0, 3, QStringLiteral("overdue"));
    QCOMPARE(rail.button(0)->accessibleName(), QStringLiteral("Upkeep, 3 overdue"));
    rail.setBadge(0, 0, QStringLiteral("overdue"));
    QCOMPARE(rail.button(0)->accessibleName(), QStringLiteral("Upkeep"));
}

void TstWidgets::everyInteractiveWidgetHasAName()
{
    const auto window = sampler();
    int seen = 0;
    const QList<QWidget *> all = window->findChildren<QWidget *>();
    for (const QWidget *widget : all) {
        // Parts of Qt's own composites (clear button, viewport) are not stops of the keyboard.
        if (widget->focusPolicy() == Qt::NoFocus || widget->focusProxy() != nullptr ||
            widget->objectName().startsWith(QLatin1String("qt_")))
            continue;
        ++seen;
        QVERIFY2(!widget->accessibleName().isEmpty(), widget->metaObject()->className());
    }
    QVERIFY(seen >= 10);
}

void TstWidgets::labelsArePlainText()
{
    const auto window = sampler();
    const QList<QLabel *> labels = window->findChildren<QLabel *>();
    QVERIFY(labels.size() > 8);
    for (const QLabel *label : labels)
        QCOMPARE(label->textFormat(), Qt::PlainText);
}

void TstWidgets::fieldSaysWhatIsWrongAndKeepsTheInput()
{
    auto *editor = new UnitLineEdit(QStringLiteral("lb"));
    FieldRow row(QStringLiteral("Weight"), editor);
    row.setHelp(QStringLiteral("As it lies."));
    editor->setText(QStringLiteral("-4"));
    QCOMPARE(row.message(), QStringLiteral("As it lies."));
    row.setProblem(QStringLiteral("A weight is more than 0 lb."));
    QVERIFY(row.hasProblem());
    QVERIFY(isInvalid(editor));
    QCOMPARE(row.message(), QStringLiteral("A weight is more than 0 lb."));
    QCOMPARE(editor->accessibleDescription(), QStringLiteral("A weight is more than 0 lb."));
    QCOMPARE(editor->text(), QStringLiteral("-4"));
    row.clearProblem();
    QVERIFY(!isInvalid(editor));
    QCOMPARE(row.message(), QStringLiteral("As it lies."));
    QCOMPARE(editor->accessibleName(), QStringLiteral("Weight"));
}

void TstWidgets::focusIsVisible()
{
    const auto window = sampler();
    window->resize(700, 1400);
    window->show();
    QVERIFY(QTest::qWaitForWindowActive(window.get()));
    int seen = 0;
    const QList<QWidget *> all = window->findChildren<QWidget *>();
    for (QWidget *widget : all) {
        if (!(widget->focusPolicy() & Qt::TabFocus) || !widget->isVisible())
            continue;
        window->setFocus();
        QApplication::processEvents();
        if (QWidget *now = QApplication::focusWidget())
            now->clearFocus();
        const QImage before = widget->grab().toImage();
        widget->setFocus(Qt::TabFocusReason);
        const QImage after = widget->grab().toImage();
        QVERIFY2(before != after, widget->metaObject()->className());
        ++seen;
    }
    QVERIFY(seen >= 7);
}

void TstWidgets::textFitsAtTwiceTheSize()
{
    ThemeHub::apply(*qApp, Mode::Light, 2.0);
    const auto window = sampler();
    window->resize(1200, 3400);
    window->show();
    QApplication::processEvents();
    const QList<QLabel *> labels = window->findChildren<QLabel *>();
    for (const QLabel *label : labels) {
        if (!label->isVisible() || label->text().isEmpty())
            continue;
        const int needed =
            label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
        QVERIFY2(label->height() >= needed, qPrintable(label->text()));
        if (!label->wordWrap())
            QVERIFY2(label->width() >= label->sizeHint().width(), qPrintable(label->text()));
    }
    const QList<QAbstractButton *> buttons = window->findChildren<QAbstractButton *>();
    for (const QAbstractButton *button : buttons) {
        if (!button->isVisible() || button->text().isEmpty())
            continue;
        const QSize words = button->fontMetrics().size(Qt::TextShowMnemonic, button->text());
        QVERIFY2(button->width() >= words.width() && button->height() >= words.height(),
                 qPrintable(button->text()));
    }
    // Drawn by themselves: no ink may touch the edge of the box they asked for.
    const QList<Numeral *> numerals = window->findChildren<Numeral *>();
    QVERIFY(!numerals.isEmpty());
    for (const Numeral *numeral : numerals) {
        const QFontMetrics metrics(theme().font(TextStyle::NumeralLarge));
        QVERIFY(numeral->width() >= metrics.horizontalAdvance(numeral->value()));
        QVERIFY(numeral->height() >= metrics.height());
    }
    const auto *tap = window->findChild<TapButton *>();
    const QFontMetrics big(theme().font(TextStyle::Display));
    QVERIFY(tap->minimumSizeHint().width() > big.horizontalAdvance(tap->text()));
    const auto *pill = window->findChild<StatusPill *>();
    QVERIFY(pill->width() >
            QFontMetrics(theme().font(TextStyle::Caption)).horizontalAdvance(pill->word()));
    auto *edit = window->findChild<UnitLineEdit *>();
    QVERIFY(edit->height() >= edit->fontMetrics().height() + 4);
    QVERIFY(edit->textMargins().right() >=
            QFontMetrics(theme().font(TextStyle::Label)).horizontalAdvance(edit->unit()));
}

void TstWidgets::sentenceWrapsWithoutLosingWords()
{
    SentenceLabel label;
    label.setParts({{QStringLiteral("Order "), false, Role::Ink},
                    {QStringLiteral("2 cords of oak"), true, Role::Accent},
                    {QStringLiteral(" by "), false, Role::Ink},
                    {QStringLiteral("-3 Friday"), true, Role::Act},
                    {QStringLiteral(", or the harvest supper runs short."), false, Role::Ink}});
    QCOMPARE(label.plainText(), QStringLiteral("Order 2 cords of oak by \u22123 Friday, or the "
                                               "harvest supper runs short."));
    QCOMPARE(label.accessibleName(), label.plainText());
    // A short figure is never torn: the label asks for the width it needs in one piece.
    QVERIFY(label.minimumSizeHint().width() >=
            QFontMetrics(theme().font(TextStyle::NumeralLarge))
                .horizontalAdvance(QStringLiteral("2 cords of oak")));
    const int wide = label.heightForWidth(2000);
    const int narrow = label.heightForWidth(300);
    QVERIFY(narrow >= 2 * wide);
    // Rendered in the height it asked for, nothing reaches the last row of pixels.
    label.resize(300, narrow);
    const QImage image = label.grab().toImage();
    const QRgb ground = image.pixel(image.width() - 1, image.height() - 1);
    for (int x = 0; x < image.width(); ++x)
        QCOMPARE(image.pixel(x, image.height() - 1), ground);
}

void TstWidgets::pillNeverStandsWithoutAWord()
{
    QWidget parent;
    auto *pill = new StatusPill(Role::Act, QStringLiteral("Overdue"), &parent);
    QVERIFY(!pill->isHidden());
    pill->setStatus(Role::Act, QString());
    QVERIFY(pill->isHidden());
    // The four states differ in shape too: drawn in one colour they are four pictures.
    QSet<QByteArray> shapes;
    for (const Role role : {Role::Good, Role::Watch, Role::Act, Role::Info}) {
        const Theme look = Theme::make(Mode::Light);
        QImage image(24, 24, QImage::Format_ARGB32);
        image.fill(look.soft(role));
        QPainter painter(&image);
        StatusPill::paint(&painter, QRect(0, 0, 24, 24), role, QString(), look);
        painter.end();
        QByteArray bits;
        for (int y = 0; y < 24; ++y) {
            for (int x = 0; x < 24; ++x)
                bits.append(image.pixel(x, y) == look.color(role).rgb() ? '1' : '0');
        }
        QVERIFY(bits.contains('1'));
        shapes.insert(bits);
    }
    QCOMPARE(shapes.size(), 4);
}

void TstWidgets::noticeRunsItsActionsAndGoesAway()
{
    NoticeBar bar;
    QVERIFY(bar.isHidden());
    int ran = 0;
    bar.showInfo(QStringLiteral("Feed undone"), {{QStringLiteral("Redo"), [&] { ++ran; }}});
    QVERIFY(!bar.isHidden());
    QCOMPARE(bar.accessibleName(), QStringLiteral("Feed undone"));
    QTest::mouseClick(bar.findChild<QPushButton *>(), Qt::LeftButton);
    QCOMPARE(ran, 1);
    QSignalSpy spy(&bar, &NoticeBar::dismissed);
    QTest::keyClick(&bar, Qt::Key_Escape);
    QVERIFY(bar.isHidden());
    QCOMPARE(spy.count(), 1);
}

void TstWidgets::cautionSaysWhoDecides()
{
    const CautionNote note(QStringLiteral("Ash keeps fire for days."));
    QVERIFY(note.accessibleName().contains(QStringLiteral("Ash keeps fire for days.")));
    QVERIFY(note.accessibleName().contains(
        QStringLiteral("ocal code and the authority having jurisdiction decide")));
}

void TstWidgets::tapButtonAnswersItsKey()
{
    QWidget window;
    auto *tap = new TapButton(QStringLiteral("Feed one split"), &window);
    tap->setKey(QKeySequence(Qt::Key_F));
    tap->resize(tap->sizeHint());
    QVERIFY(tap->height() >= 96);
    QSignalSpy spy(tap, &QAbstractButton::clicked);
    window.show();
    QVERIFY(QTest::qWaitForWindowActive(&window));
    QTest::keyClick(&window, Qt::Key_F);
    // A shortcut shows the press for a moment before it counts as a click.
    QTRY_COMPARE(spy.count(), 1);
}

void TstWidgets::flowBreaksIntoRows()
{
    QWidget window;
    auto *flow = new FlowLayout(&window);
    for (int i = 0; i < 4; ++i) {
        auto *box = new QWidget;
        box->setFixedSize(100, 20);
        flow->addWidget(box);
    }
    QCOMPARE(flow->heightForWidth(1000), 20);
    QVERIFY(flow->heightForWidth(230) >= 40);
    QVERIFY(flow->heightForWidth(110) >= 80);
    QVERIFY(flow->heightForWidth(230) < flow->heightForWidth(110));
}

void TstWidgets::searchEmptiesOnEscape()
{
    SearchField field(QStringLiteral("Find a lot"));
    field.setText(QStringLiteral("oak"));
    QTest::keyClick(&field, Qt::Key_Escape);
    QVERIFY(field.text().isEmpty());
}

void TstWidgets::chartAnswersTheKeyboardAndExports()
{
    ChartView view(QStringLiteral("Wood use against cook length"));
    view.addAxis(new QValueAxis, Qt::AlignBottom, QStringLiteral("hours"));
    view.addAxis(new QValueAxis, Qt::AlignLeft, QStringLiteral("lb"));
    auto *cooks = new QScatterSeries;
    cooks->setName(QStringLiteral("<b>Big pit</b>"));
    cooks->replace(QList<QPointF>{{8, 120}, {12, 170}, {10, 140}});
    view.add(cooks, 1, SeriesPart::Measured);
    view.setDescribe([](const QAbstractSeries *series, const QPointF &point) {
        return QStringLiteral("%1 %2").arg(series->name()).arg(point.x());
    });
    view.resize(480, 300);
    view.show();
    QSignalSpy spy(&view, &ChartView::pointShown);
    QTest::keyClick(&view, Qt::Key_Right);
    QTest::keyClick(&view, Qt::Key_Right);
    QTest::keyClick(&view, Qt::Key_End);
    QCOMPARE(spy.count(), 3);
    QCOMPARE(spy.at(0).at(0).toString(), QStringLiteral("<b>Big pit</b> 8"));
    QCOMPARE(spy.at(1).at(0).toString(), QStringLiteral("<b>Big pit</b> 10"));
    QCOMPARE(spy.at(2).at(0).toString(), QStringLiteral("<b>Big pit</b> 12"));
    // Another pit has another marker as well as another hue.
    QVERIFY(markerShape(0) != markerShape(1));
    QVERIFY(seriesColor(0, theme()) != seriesColor(1, theme()));
    QCOMPARE(cooks->color(), theme().color(Role::ChartB));
    ThemeHub::apply(*qApp, Mode::Dark);
    QCOMPARE(cooks->color(), theme().color(Role::ChartB));

    const QTemporaryDir folder;
    const QString png = folder.filePath(QStringLiteral("chart.png"));
    const QString svg = folder.filePath(QStringLiteral("chart.svg"));
    QVERIFY(!view.exportPicture(png));
    QVERIFY(!view.exportPicture(svg));
    const QImage image(png);
    QCOMPARE(image.width(), 2 * view.viewport()->width());
    // On paper, even when the screen is dark.
    QVERIFY(image.pixelColor(1, 1).lightness() > 240);
    QVERIFY(QSvgRenderer(svg).isValid());
    QVERIFY(view.exportPicture(folder.filePath(QStringLiteral("chart.doc"))).has_value());
    QVERIFY(view.exportPicture(folder.filePath(QStringLiteral("no/chart.svg"))).has_value());
    QCOMPARE(cooks->color(), theme().color(Role::ChartB));
}

void TstWidgets::sparklineSaysItsRange()
{
    Sparkline line(QStringLiteral("Big pit, last cooks"));
    line.setValues({1.0, qQNaN(), 4.0, -2.0});
    QCOMPARE(line.accessibleName(), QStringLiteral("Big pit, last cooks"));
    QCOMPARE(line.accessibleDescription(),
             QStringLiteral("3 values from \u22122 to 4, last \u22122"));
}

void TstWidgets::aStackIsAsTallAsItsPage()
{
    FittingStack stack;
    auto *low = new QWidget;
    new QVBoxLayout(low);
    auto *tall = new QWidget;
    (new QVBoxLayout(tall))->addSpacing(900);
    stack.addWidget(low);
    stack.addWidget(tall);
    QVERIFY(stack.minimumSizeHint().height() < 100);
    stack.setCurrentIndex(1);
    QVERIFY(stack.minimumSizeHint().height() >= 900);
}

void TstWidgets::aColumnAsksForItsWidth()
{
    ColumnScroll scroll;
    auto *wide = new QWidget;
    auto *row = new QVBoxLayout(wide);
    auto *inner = new QWidget;
    inner->setMinimumWidth(700);
    row->addWidget(inner);
    scroll.setWidget(wide);
    QVERIFY(scroll.minimumSizeHint().width() >= 700);
    QVERIFY(scroll.minimumSizeHint().height() < 700);
}

RICKYARD_TEST(TstWidgets)
#include "tst_widgets.moc"
