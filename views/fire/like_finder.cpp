#include "views/fire/like_finder.h"

#include "models/items/wording.h"
#include "views/fire/fire_words.h"
#include "views/records/field_editor.h"
#include "views/records/field_set.h"
#include "views/theme/number_style.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/clear_layout.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/text_label.h"

#include <QPushButton>
#include <QVBoxLayout>

#include <cmath>

namespace rickyard::views {

using namespace rickyard::domain;

namespace {

constexpr int kLikeShown = 3;
constexpr double kAskedHours = 0.5; // what is filled in is rounded to something a cook would say
constexpr double kStillAlike = 1.0; // steps, see cook_likeness.h
constexpr double kFarOff = 3.0;

const CookFuel *fuelAnswerOf(const QVector<CookFuel> &cooks, RecordId cook)
{
    for (const CookFuel &fuel : cooks)
        if (fuel.cook == cook)
            return &fuel;
    return nullptr;
}

} // namespace

LikeFinder::LikeFinder(PageContext &context, QWidget *parent)
    : QWidget(parent), m_context(context),
      m_fields(new FieldSet(context, TableId::PlannedCook, this)), m_results(new QVBoxLayout)
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(3));
    auto *row = new QWidget(this);
    auto *flow = new FlowLayout(row);
    flow->setSpacingSteps(4, 2);
    const std::pair<const char *, QString> asked[] = {{"pit", tr("Pit")},
                                                      {"length", tr("Lighting to fire out")},
                                                      {"outside", tr("Outside")},
                                                      {"food_mass", tr("Food weight")}};
    for (const auto &[key, label] : asked) {
        FieldRow *field = m_fields->add(QLatin1String(key), label);
        field->setHelp(QString());
        field->setFixedWidth(look.px(190));
        flow->addWidget(field);
    }
    column->addWidget(row);
    m_results->setSpacing(look.space(1));
    column->addLayout(m_results);
    connect(m_fields, &FieldSet::edited, this, &LikeFinder::find);
}

void LikeFinder::setCook(RecordId id)
{
    m_cook = id;
    const QVector<CookFuel> &cooks = m_context.answers.answers().fuel.cooks;
    const auto cook = m_context.books().cooks.constFind(id);
    if (cook != m_context.books().cooks.constEnd()) {
        const CookFuel *fuel = fuelAnswerOf(cooks, id);
        const CookWish wish = wishOf(*cook, fuel != nullptr ? *fuel : CookFuel());
        PlannedCook asked;
        asked.pit = cook->pit;
        asked.length = durationFromHours(
            kAskedHours * std::round(hours(wish.length.value_or(Duration())) / kAskedHours));
        if (wish.outside) {
            const Unit &unit = FireWords(m_context.books()).unit(Dimension::Temperature);
            asked.outside =
                Temperature::ofBase(fromUnit(std::round(toUnit(wish.outside->base(), unit)), unit));
        }
        asked.foodMass = wish.food;
        Row row = toRow(asked);
        if (!wish.length)
            domain::setValue(row, QStringLiteral("length"), std::monostate{});
        m_fields->show(row);
    }
    find();
}

void LikeFinder::find()
{
    Row row = emptyRow(TableId::PlannedCook);
    // A field that cannot be read yet is not asked for; its row says what is wrong with it.
    Problems unreadable;
    for (const Problem &problem : m_fields->readInto(row))
        if (m_fields->editor(problem.field) != nullptr &&
            !m_fields->editor(problem.field)->typed().problem.isEmpty())
            unreadable << problem;
    (void)m_fields->showProblems(unreadable);
    const auto asked = fromRow<PlannedCook>(row);
    CookWish wish;
    if (asked.pit != 0)
        wish.pit = asked.pit;
    if (asked.length > Duration())
        wish.length = asked.length;
    wish.outside = asked.outside;
    wish.food = asked.foodMass;
    m_found = mostLike(m_context.books(), m_context.answers.answers().fuel.cooks, wish, m_cook,
                       kLikeShown);
    clearLayout(m_results);
    if (m_found.isEmpty())
        m_results->addWidget(new TextLabel(tr("There is no other finished cook yet."),
                                           TextStyle::Body, Role::InkMuted, this));
    for (const CookLikeness &likeness : std::as_const(m_found))
        addResult(likeness);
}

QString LikeFinder::wordsOf(RecordId id) const
{
    const Books &books = m_context.books();
    const FireWords words(books);
    const Cook cook = books.cooks.value(id);
    QStringList parts{books.pits.value(cook.pit).name};
    if (const CookFuel *fuel = fuelAnswerOf(m_context.answers.answers().fuel.cooks, id)) {
        parts << withUnit(formatNumber(hours(fuel->length), 1, words.locale()),
                          QStringLiteral("h"));
        if (fuel->meanOutside)
            parts << tr("%1 outside").arg(words.temperature(*fuel->meanOutside).text());
    }
    if (cook.foodMass)
        parts << tr("%1 of food").arg(words.mass(*cook.foodMass).text());
    return QStringLiteral("%1, %2: %3")
        .arg(cookTitle(books, cook),
             items::dayText(items::toLocal(books, cook.lit).date(), words.locale()),
             parts.join(QStringLiteral(", ")));
}

void LikeFinder::addResult(const CookLikeness &likeness)
{
    const QString how = likeness.distance <= kStillAlike ? tr("much alike")
                        : likeness.distance <= kFarOff   ? tr("somewhat alike")
                                                         : tr("not much alike");
    const QString text = wordsOf(likeness.cook);
    auto *row = new QWidget(this);
    auto *line = new QHBoxLayout(row);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(theme(this).space(3));
    auto *words = new TextLabel(text, TextStyle::Body, Role::Ink, row);
    words->setWordWrap(true);
    line->addWidget(words, 1);
    line->addWidget(new TextLabel(how, TextStyle::Caption, Role::InkMuted, row));
    auto *button = new QPushButton(tr("Compare"), row);
    button->setProperty("role", "quiet");
    button->setAccessibleName(tr("Compare with %1, %2").arg(text, how));
    const RecordId cook = likeness.cook;
    connect(button, &QPushButton::clicked, this, [this, cook] { Q_EMIT chosen(cook); });
    line->addWidget(button);
    m_results->addWidget(row);
}

} // namespace rickyard::views
