MADE_FROM = 'cbced7a752764ffbaacce85ae21f8f819e53c83390ce4e78cfad83fb937b0a85'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'comparison.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_facts = l_0_pieces = missing
    try:
        t_1 = environment.filters['length']
    except KeyError:
        @internalcode
        def t_1(*unused):
            raise TemplateRuntimeError("No filter named 'length' found.")
    pass
    parent_template = environment.get_template('parts/page.html', 'comparison.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    def macro(l_1_change, l_1_list):
        t_2 = []
        if l_1_change is missing:
            l_1_change = undefined("parameter 'change' was not provided", name='change')
        if l_1_list is missing:
            l_1_list = undefined("parameter 'list' was not provided", name='list')
        pass
        l_2_loop = missing
        for l_2_fact, l_2_loop in LoopContext(l_1_list, undefined):
            _loop_vars = {}
            pass
            t_2.append(
                '<tr>',
            )
            if environment.getattr(l_2_loop, 'first'):
                pass
                t_2.extend((
                    '<th scope="row" class="id" rowspan="',
                    escape(t_1(l_1_list)),
                    '">',
                    escape(environment.getattr(environment.getattr(l_1_change, 'new'), 'id')),
                ))
                if (environment.getattr(environment.getattr(l_1_change, 'old'), 'id') != environment.getattr(environment.getattr(l_1_change, 'new'), 'id')):
                    pass
                    t_2.extend((
                        ' <span class="small">was ',
                        escape(environment.getattr(environment.getattr(l_1_change, 'old'), 'id')),
                        '</span>',
                    ))
                t_2.append(
                    '</th>',
                )
            t_2.extend((
                '<td class="what">',
                escape(environment.getattr(l_2_fact, 'what')),
                '</td><td>',
                escape((environment.getattr(l_2_fact, 'before') or 'nothing')),
                '</td><td><b>',
                escape((environment.getattr(l_2_fact, 'after') or 'nothing')),
                '</b></td></tr>\n',
            ))
        l_2_loop = l_2_fact = missing
        return concat(t_2)
    context.exported_vars.add('facts')
    context.vars['facts'] = l_0_facts = Macro(environment, macro, 'facts', ('change', 'list'), False, False, False, context.eval_ctx.autoescape)
    def macro(l_1_title, l_1_list):
        t_3 = []
        if l_1_title is missing:
            l_1_title = undefined("parameter 'title' was not provided", name='title')
        if l_1_list is missing:
            l_1_list = undefined("parameter 'list' was not provided", name='list')
        pass
        t_3.extend((
            '<section>\n<h2>',
            escape(l_1_title),
            '</h2>\n<table>\n<thead><tr><th scope="col">piece</th><th scope="col">room</th><th scope="col">run</th><th scope="col">trim</th><th scope="col" class="number">length</th></tr></thead>\n<tbody>\n',
        ))
        for l_2_piece in l_1_list:
            l_2_long = resolve('long')
            _loop_vars = {}
            pass
            t_3.extend((
                '<tr><th scope="row" class="id">',
                escape(environment.getattr(l_2_piece, 'id')),
                '</th><td>',
                escape(environment.getattr(l_2_piece, 'room')),
                '</td><td>',
                escape(environment.getattr(l_2_piece, 'run')),
                '</td><td>',
                escape(environment.getattr(l_2_piece, 'trim')),
                '</td><td class="number">',
                escape(context.call((undefined(name='long') if l_2_long is missing else l_2_long), l_2_piece, _loop_vars=_loop_vars)),
                '</td></tr>\n',
            ))
        l_2_piece = l_2_long = missing
        t_3.append(
            '</tbody>\n</table>\n</section>\n',
        )
        return concat(t_3)
    context.exported_vars.add('pieces')
    context.vars['pieces'] = l_0_pieces = Macro(environment, macro, 'pieces', ('title', 'list'), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'comparison'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_versions = resolve('versions')
    l_0_revisions = resolve('revisions')
    l_0_found = resolve('found')
    l_0_say = resolve('say')
    l_0_pieces = resolve('pieces')
    l_0_cost = resolve('cost')
    try:
        t_4 = environment.filters['list']
    except KeyError:
        @internalcode
        def t_4(*unused):
            raise TemplateRuntimeError("No filter named 'list' found.")
    try:
        t_5 = environment.filters['rejectattr']
    except KeyError:
        @internalcode
        def t_5(*unused):
            raise TemplateRuntimeError("No filter named 'rejectattr' found.")
    pass
    yield '<p class="how">From '
    yield escape(environment.getattr((undefined(name='versions') if l_0_versions is missing else l_0_versions), 'old'))
    yield ' (revision '
    yield escape(environment.getitem((undefined(name='revisions') if l_0_revisions is missing else l_0_revisions), 0))
    yield ') to '
    yield escape(environment.getattr((undefined(name='versions') if l_0_versions is missing else l_0_versions), 'new'))
    yield ' (revision '
    yield escape(environment.getitem((undefined(name='revisions') if l_0_revisions is missing else l_0_revisions), 1))
    yield '), by what they mean at the saw and at the counter.</p>\n'
    if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'same'):
        pass
        yield '<p><b>Nothing has changed: pieces, tickets, order and cost are the same.</b></p>\n'
    else:
        pass
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'wrong'):
            pass
            yield '<section class="urgent">\n<h2>Already cut and wrong now</h2>\n<table>\n<thead><tr><th scope="col">piece</th><th scope="col">why</th><th scope="col">what to do</th></tr></thead>\n<tbody>\n'
            for l_1_one in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'wrong'):
                _loop_vars = {}
                pass
                yield '<tr><th scope="row" class="id">'
                yield escape(environment.getattr(l_1_one, 'id'))
                yield '</th><td>'
                yield escape(environment.getattr(l_1_one, 'why'))
                yield '</td><td><b>'
                yield escape(environment.getattr(l_1_one, 'remedy'))
                yield '</b></td></tr>\n'
            l_1_one = missing
            yield '</tbody>\n</table>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'stood'):
            pass
            yield '<section>\n<h2>On site since</h2>\n<ul class="steps">\n'
            for l_1_text in context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'stood_texts'), (undefined(name='found') if l_0_found is missing else l_0_found), _block_vars=_block_vars):
                _loop_vars = {}
                pass
                yield '<li>'
                yield escape(l_1_text)
                yield '</li>\n'
            l_1_text = missing
            yield '</ul>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'renamed'):
            pass
            yield '<section>\n<h2>Renamed</h2>\n<ul class="steps">\n'
            for l_1_text in context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'renamed_texts'), (undefined(name='found') if l_0_found is missing else l_0_found), _block_vars=_block_vars):
                _loop_vars = {}
                pass
                yield '<li>'
                yield escape(l_1_text)
                yield '</li>\n'
            l_1_text = missing
            yield '</ul>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'added'):
            pass
            yield escape(context.call((undefined(name='pieces') if l_0_pieces is missing else l_0_pieces), 'New pieces', environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'added'), _block_vars=_block_vars))
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'gone'):
            pass
            yield escape(context.call((undefined(name='pieces') if l_0_pieces is missing else l_0_pieces), 'Pieces gone', environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'gone'), _block_vars=_block_vars))
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'recut'):
            pass
            yield '<section>\n<h2>Cut otherwise</h2>\n<table>\n<thead><tr><th scope="col">piece</th><th scope="col">what</th><th scope="col">before</th><th scope="col">now</th></tr></thead>\n<tbody>\n'
            for l_1_change in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'recut'):
                l_1_facts = resolve('facts')
                _loop_vars = {}
                pass
                yield escape(context.call((undefined(name='facts') if l_1_facts is missing else l_1_facts), l_1_change, environment.getattr(l_1_change, 'cut'), _loop_vars=_loop_vars))
            l_1_change = l_1_facts = missing
            yield '</tbody>\n</table>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'reprint'):
            pass
            yield '<section>\n<h2>Tickets to print</h2>\n<ul class="names">\n'
            for l_1_name in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'reprint'):
                _loop_vars = {}
                pass
                yield '<li>'
                yield escape(l_1_name)
                yield '</li>\n'
            l_1_name = missing
            yield '</ul>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'order'):
            pass
            yield '<section>\n<h2>Order</h2>\n<table>\n<thead><tr><th scope="col">what</th><th scope="col">as</th><th scope="col" class="number">count before</th><th scope="col" class="number">now</th><th scope="col" class="number">cost before</th><th scope="col" class="number">now</th></tr></thead>\n<tbody>\n'
            for l_1_line in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'order'):
                _loop_vars = {}
                pass
                yield '<tr><th scope="row">'
                yield escape(environment.getattr(l_1_line, 'what'))
                yield '</th><td>'
                yield escape(environment.getattr(l_1_line, 'detail'))
                yield '</td><td class="number">'
                yield escape(environment.getattr(l_1_line, 'old_count'))
                yield '</td><td class="number"><b>'
                yield escape(environment.getattr(l_1_line, 'new_count'))
                yield '</b></td><td class="number">'
                yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'old_money'), environment.getattr(l_1_line, 'old_cost'), _loop_vars=_loop_vars))
                yield '</td><td class="number"><b>'
                yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'new_money'), environment.getattr(l_1_line, 'new_cost'), _loop_vars=_loop_vars))
                yield '</b></td></tr>\n'
            l_1_line = missing
            yield '</tbody>\n</table>\n</section>\n'
        yield '<section class="sum">\n<h2>Cost</h2>\n<dl class="facts">\n<div><dt>trim</dt><dd>'
        yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'old_money'), environment.getattr(environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'old_money'), 'trim'), _block_vars=_block_vars))
        yield ' → '
        yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'new_money'), environment.getattr(environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'new_money'), 'trim'), _block_vars=_block_vars))
        yield '</dd></div>\n<div><dt>fixing and finishing</dt><dd>'
        yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'old_money'), environment.getattr(environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'old_money'), 'supplies'), _block_vars=_block_vars))
        yield ' → '
        yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'sum_text'), environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'new_money'), environment.getattr(environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'new_money'), 'supplies'), _block_vars=_block_vars))
        yield '</dd></div>\n<div><dt>together</dt><dd class="total">'
        yield escape((undefined(name='cost') if l_0_cost is missing else l_0_cost))
        yield '</dd></div>\n</dl>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'told_otherwise'):
            pass
            yield '<section>\n<h2>Same cuts, but the ticket says something else</h2>\n<table>\n<thead><tr><th scope="col">piece</th><th scope="col">what</th><th scope="col">before</th><th scope="col">now</th></tr></thead>\n<tbody>\n'
            for l_1_change in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'told_otherwise'):
                l_1_facts = resolve('facts')
                _loop_vars = {}
                pass
                yield escape(context.call((undefined(name='facts') if l_1_facts is missing else l_1_facts), l_1_change, t_4(context.eval_ctx, t_5(context, environment.getattr(l_1_change, 'told'), 'what', 'equalto', 'name')), _loop_vars=_loop_vars))
            l_1_change = l_1_facts = missing
            yield '</tbody>\n</table>\n</section>\n'
        if environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'moved'):
            pass
            yield '<section>\n<h2>Same cuts, elsewhere on the sticks</h2>\n<ul class="names plain">\n'
            for l_1_change in environment.getattr((undefined(name='found') if l_0_found is missing else l_0_found), 'moved'):
                _loop_vars = {}
                pass
                yield '<li><b>'
                yield escape(environment.getattr(environment.getattr(l_1_change, 'new'), 'id'))
                yield '</b> '
                yield escape(context.call(environment.getattr((undefined(name='say') if l_0_say is missing else l_0_say), 'moved_text'), l_1_change, _loop_vars=_loop_vars))
                yield '</li>\n'
            l_1_change = missing
            yield '</ul>\n</section>\n'

blocks = {'kind': block_kind, 'body': block_body}
debug_info = '1=19&3=22&4=30&5=36&8=67&10=76&14=79&15=85&2=105&21=115&22=142&23=150&26=155&32=158&33=162&39=170&43=173&44=177&49=181&53=184&54=188&59=192&60=195&61=198&67=201&72=208&76=211&77=215&82=219&88=222&89=226&98=241&99=245&100=249&103=251&109=254&114=261&118=264&119=268'
