// How the dialogs for foreign tables are put together; what they do is in import_dialog.cpp.
#include "views/records/import_dialog.h"
#include "views/theme/icons.h"
#include "views/theme/theme_hub.h"
#include "views/widgets/notice_bar.h"
#include "views/widgets/status_pill.h"
#include "views/widgets/text_label.h"

#include <QComboBox>
#include <QHeaderView>
#include <QLineEdit>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QStandardItemModel>
#include <QTableView>
#include <QVBoxLayout>

namespace rickyard::views {

ImportDialog::ImportDialog(PageContext &context, Words words, QWidget *parent)
    : QDialog(parent), m_context(context), m_say(std::move(words))
{
}

void ImportDialog::build(QWidget *form)
{
    const Theme &look = theme(this);
    m_columns = form;
    setWindowTitle(m_say.title);
    setAcceptDrops(true);
    resize(look.px(1080), look.px(700));
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(5), look.space(5), look.space(5), look.space(4));
    column->setSpacing(look.space(3));
    column->addWidget(buildTop());
    m_notice = new NoticeBar(this);
    column->addWidget(m_notice);
    auto *middle = new QHBoxLayout;
    middle->setSpacing(look.space(5));
    middle->addWidget(buildLeft(form), 2);
    middle->addWidget(buildRight(), 3);
    column->addLayout(middle, 1);
    column->addWidget(buildBottom());
    m_soon.setSingleShot(true);
    m_soon.setInterval(250);
    m_writePoll.setInterval(80);
    connect(&m_soon, &QTimer::timeout, this, [this] { readNow(); });
    connect(&m_writePoll, &QTimer::timeout, this, [this] {
        if (m_write) {
            m_progress->setRange(0, m_write->total);
            m_progress->setValue(m_write->written);
        }
    });
    fillProfiles();
}

QWidget *ImportDialog::buildTop()
{
    const Theme &look = theme(this);
    auto *top = new QWidget;
    auto *row = new QHBoxLayout(top);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(3));
    m_choose = new QPushButton(icon(QStringLiteral("import")), tr("Choose a file…"));
    m_choose->setAccessibleName(m_say.choose);
    m_choose->setAutoDefault(false);
    connect(m_choose, &QPushButton::clicked, this, &ImportDialog::chooseFile);
    m_fileName = new TextLabel(tr("No file chosen"), TextStyle::Heading);
    m_fileName->setTextInteractionFlags(Qt::NoTextInteraction);
    m_fileName->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_choose);
    row->addWidget(m_fileName, 1);
    m_choices = new QHBoxLayout;
    m_choices->setSpacing(look.space(3));
    row->addLayout(m_choices);
    m_profiles = new QComboBox;
    m_profiles->setAccessibleName(tr("Mapping to start from"));
    connect(m_profiles, &QComboBox::activated, this, [this] { useProfile(profile()); });
    addChoice(tr("Mapping"), m_profiles);
    return top;
}

// The one added last stands first: the mapping is the least of the choices.
void ImportDialog::addChoice(const QString &label, QComboBox *box)
{
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(22);
    m_choices->insertWidget(0, new TextLabel(label, TextStyle::Label, Role::InkMuted));
    m_choices->insertWidget(1, box);
    m_choiceBoxes << box;
}

QWidget *ImportDialog::buildLeft(QWidget *form)
{
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto *inner = new QWidget;
    auto *column = new QVBoxLayout(inner);
    column->setContentsMargins(0, 0, theme(this).space(3), 0);
    m_guess = new TextLabel(m_say.intro, TextStyle::Caption, Role::InkMuted);
    m_guess->setWordWrap(true);
    column->addWidget(m_guess);
    column->addWidget(form, 1);
    scroll->setWidget(inner);
    // Nothing of it is cut: it scrolls down only.
    scroll->setMinimumWidth(inner->minimumSizeHint().width() + theme(this).px(20));
    return scroll;
}

QWidget *ImportDialog::buildRight()
{
    const Theme &look = theme(this);
    auto *right = new QWidget;
    auto *column = new QVBoxLayout(right);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(look.space(2));
    column->addWidget(new TextLabel(tr("The first rows, as understood"), TextStyle::Heading));
    m_preview = new QStandardItemModel(this);
    m_previewView = new QTableView;
    m_previewView->setModel(m_preview);
    m_previewView->setAccessibleName(tr("The first rows as understood"));
    m_previewView->setShowGrid(false);
    m_previewView->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_previewView->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_previewView->setTabKeyNavigation(false);
    m_previewView->setWordWrap(false);
    m_previewView->verticalHeader()->hide();
    m_previewView->verticalHeader()->setDefaultSectionSize(look.px(30));
    column->addWidget(m_previewView, 1);
    auto *head = new QHBoxLayout;
    head->addWidget(new TextLabel(tr("The whole file"), TextStyle::Heading));
    m_verdict = new StatusPill(Role::Info, QString());
    head->addWidget(m_verdict);
    head->addStretch(1);
    column->addLayout(head);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setAccessibleName(tr("Report on the whole file"));
    m_report = new TextLabel(QString(), TextStyle::Body);
    m_report->setWordWrap(true);
    m_report->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_report->setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
    m_report->setAccessibleName(tr("Report on the whole file"));
    scroll->setWidget(m_report);
    column->addWidget(scroll, 1);
    return right;
}

QWidget *ImportDialog::buildBottom()
{
    const Theme &look = theme(this);
    auto *bottom = new QWidget;
    auto *row = new QHBoxLayout(bottom);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(look.space(2));
    m_profileName = new QLineEdit;
    m_profileName->setPlaceholderText(tr("Name of this mapping"));
    m_profileName->setAccessibleName(tr("Name of this mapping"));
    m_profileName->setMaximumWidth(look.px(220));
    m_saveProfile = new QPushButton(tr("Save mapping"));
    m_saveProfile->setAccessibleName(tr("Save the mapping under this name"));
    m_saveProfile->setAutoDefault(false);
    connect(m_saveProfile, &QPushButton::clicked, this,
            [this] { saveProfile(m_profileName->text()); });
    m_progress = new QProgressBar;
    m_progress->setAccessibleName(tr("Progress"));
    m_stop = new QPushButton(tr("Stop"));
    m_stop->setAccessibleName(tr("Stop; nothing is changed"));
    m_stop->setAutoDefault(false);
    connect(m_stop, &QPushButton::clicked, this, &ImportDialog::stop);
    m_import = new QPushButton(tr("Import"));
    m_import->setProperty("role", "primary");
    m_import->setAccessibleName(m_say.importName);
    connect(m_import, &QPushButton::clicked, this, &ImportDialog::startImport);
    m_close = new QPushButton(tr("Close"));
    m_close->setAccessibleName(tr("Close"));
    m_close->setAutoDefault(false);
    connect(m_close, &QPushButton::clicked, this, &QWidget::close);
    row->addWidget(m_profileName);
    row->addWidget(m_saveProfile);
    row->addWidget(m_progress, 1);
    row->addStretch();
    row->addWidget(m_stop);
    row->addWidget(m_close);
    row->addWidget(m_import);
    return bottom;
}

} // namespace rickyard::views
