// How the lighting panel is laid out; what it does is in light_panel.cpp.
#include "views/events/load_list_view.h"
#include "views/fire/fire_words.h"
#include "views/fire/light_panel.h"
#include "views/fire/lot_picker.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/card.h"
#include "views/widgets/caution_note.h"
#include "views/widgets/field_row.h"
#include "views/widgets/flow_layout.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/tap_button.h"
#include "views/widgets/text_label.h"
#include "views/widgets/unit_line_edit.h"

#include <QButtonGroup>
#include <QCheckBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QTimeEdit>

namespace rickyard::views {

using namespace rickyard::domain;

void LightPanel::build()
{
    const Theme &look = theme(this);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(4));
    auto *row = new QHBoxLayout;
    row->setSpacing(look.space(4));
    row->addWidget(buildChoices(), 1);
    row->addWidget(buildChecks(), 1);
    column->addLayout(row, 1);
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    m_light = new TapButton(tr("Light now"), this);
    m_light->setKind(ButtonKind::Primary);
    m_light->setIconName(QStringLiteral("fire"));
    m_light->setKey(QKeySequence(Qt::CTRL | Qt::Key_Return));
    m_light->setMinimumHeight(look.px(110));
    m_light->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(m_light, &TapButton::clicked, this, &LightPanel::light);
    column->addWidget(m_light);
}

QWidget *LightPanel::buildChoices()
{
    const Theme &look = theme(this);
    auto *card = new Card(tr("Light a pit"), this);
    m_pitHolder = new QWidget(card);
    m_pitFlow = new FlowLayout(m_pitHolder);
    m_pitFlow->setSpacingSteps(3, 3);
    m_pits = new QButtonGroup(this);
    connect(m_pits, &QButtonGroup::idClicked, this, [this](int id) { choosePit(id); });
    card->body()->addWidget(m_pitHolder);

    auto *startRow = new QWidget(card);
    auto *start = new QHBoxLayout(startRow);
    start->setContentsMargins(0, 0, 0, 0);
    start->setSpacing(look.space(2));
    m_start = new QButtonGroup(this);
    const QStringList kinds = {tr("Cold steel"), tr("Warm steel")};
    for (int i = 0; i < kinds.size(); ++i) {
        auto *button = new QPushButton(kinds.at(i), startRow);
        button->setCheckable(true);
        button->setAccessibleName(tr("Start: %1").arg(kinds.at(i)));
        button->setMinimumHeight(look.px(48));
        m_start->addButton(button, i);
        start->addWidget(button, 1);
    }
    m_start->button(0)->setChecked(true);
    card->body()->addWidget(startRow);

    m_target = new UnitLineEdit(FireWords(m_context.books()).unit(Dimension::Temperature).symbol);
    m_target->setAccessibleName(tr("Target temperature"));
    m_target->setMinimumHeight(look.px(44));
    m_targetRow = new FieldRow(tr("Target temperature"), m_target, card);
    connect(m_target, &QLineEdit::textEdited, this, [this] { m_targetRow->clearProblem(); });
    auto *goal = new QHBoxLayout;
    goal->setSpacing(look.space(3));
    goal->addWidget(m_targetRow, 1);
    card->body()->addLayout(goal);
    m_by = new QTimeEdit(QTime(6, 0));
    m_by->setDisplayFormat(QStringLiteral("h:mm AP"));
    m_by->setAccessibleName(tr("At temperature by"));
    m_by->setMinimumHeight(look.px(44));
    goal->addWidget(new FieldRow(tr("At temperature by"), m_by, card), 1);
    m_preheat = new TextLabel(QString(), TextStyle::BodyStrong, Role::Ink, card);
    m_preheat->setWordWrap(true);
    card->body()->addWidget(m_preheat);
    connect(m_by, &QTimeEdit::timeChanged, this, &LightPanel::showPreheat);
    connect(m_target, &QLineEdit::textEdited, this, &LightPanel::showPreheat);
    connect(m_start, &QButtonGroup::idClicked, this, &LightPanel::showPreheat);
    m_lot = new LotPicker(m_context);
    card->body()->addWidget(new FieldRow(tr("Lot to burn"), m_lot, card));
    m_asPlanned = new QCheckBox(card);
    m_asPlanned->setAccessibleName(tr("This is the planned cook"));
    card->body()->addWidget(m_asPlanned);
    card->body()->addStretch(1);
    return card;
}

QWidget *LightPanel::buildChecks()
{
    const Theme &look = theme(this);
    auto *card = new Card(tr("Before the match"), this);
    m_caution = new CautionNote(QString(), card);
    card->body()->addWidget(m_caution);
    m_pull = new TextLabel(QString(), TextStyle::BodyStrong, Role::Ink, card);
    m_pull->setWordWrap(true);
    card->body()->addWidget(m_pull);
    m_load = new QPushButton(tr("Load list"), card);
    m_load->setAccessibleName(tr("Load list of the planned cook"));
    connect(m_load, &QPushButton::clicked, this, [this] {
        if (m_planned)
            openLoadList(m_context, {TableId::PlannedCook, m_planned->id}, window());
    });
    card->body()->addWidget(m_load, 0, Qt::AlignLeft);
    m_drain = new QCheckBox(tr("I looked at the grease drain (kept as a note)"), card);
    m_drain->setAccessibleName(m_drain->text());
    m_drain->setMinimumHeight(look.px(40));
    card->body()->addWidget(m_drain);

    m_stop = new QWidget(card);
    auto *stop = new QVBoxLayout(m_stop);
    stop->setContentsMargins(0, 0, 0, 0);
    stop->setSpacing(look.space(2));
    stop->addWidget(
        new TextLabel(tr("In the way of lighting"), TextStyle::BodyStrong, Role::Act, m_stop));
    m_stopText = new TextLabel(QString(), TextStyle::Body, Role::Ink, m_stop);
    m_stopText->setWordWrap(true);
    stop->addWidget(m_stopText);
    m_reason = new QLineEdit;
    m_reason->setMaxLength(250);
    m_reason->setMinimumHeight(look.px(44));
    m_reason->setAccessibleName(tr("Reason to light all the same"));
    m_reasonRow = new FieldRow(tr("Reason to light all the same"), m_reason, m_stop);
    m_reasonRow->setHelp(tr("Kept with the cook and with each of these tasks."));
    connect(m_reason, &QLineEdit::textEdited, this, [this] { m_reasonRow->clearProblem(); });
    stop->addWidget(m_reasonRow);
    card->body()->addWidget(m_stop);
    card->body()->addStretch(1);
    return card;
}

} // namespace rickyard::views
