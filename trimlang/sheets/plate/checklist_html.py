MADE_FROM = 'f7b5152ad1d894eafb9eccd751adf10792eb10b7af51831ea0e0064a3a76d16f'
from jinja2.runtime import LoopContext, Macro, Markup, Namespace, TemplateNotFound, TemplateReference, TemplateRuntimeError, Undefined, escape, identity, internalcode, markup_join, missing, str_join
name = 'checklist.html'

def root(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    parent_template = None
    l_0_stage = missing
    pass
    parent_template = environment.get_template('parts/page.html', 'checklist.html')
    for name, parent_block in parent_template.blocks.items():
        context.blocks.setdefault(name, []).append(parent_block)
    def macro(l_1_one, l_1_key):
        t_1 = []
        if l_1_one is missing:
            l_1_one = undefined("parameter 'one' was not provided", name='one')
        if l_1_key is missing:
            l_1_key = undefined("parameter 'key' was not provided", name='key')
        pass
        t_1.extend((
            '<section class="stage">\n<h3>',
            escape(environment.getattr(l_1_one, 'name')),
            '</h3>\n<ul class="steps">\n',
        ))
        l_2_loop = missing
        for l_2_step, l_2_loop in LoopContext(environment.getattr(l_1_one, 'steps'), undefined):
            _loop_vars = {}
            pass
            t_1.extend((
                '<li><label><input type="checkbox" data-tick="stage:',
                escape(l_1_key),
                ':',
                escape(environment.getattr(l_2_loop, 'index')),
                '"> ',
                escape(l_2_step),
                '</label></li>\n',
            ))
        l_2_loop = l_2_step = missing
        t_1.append(
            '</ul>\n',
        )
        if environment.getattr(l_1_one, 'cautions'):
            pass
            t_1.append(
                '<ul class="cautions">\n',
            )
            for l_2_caution in environment.getattr(l_1_one, 'cautions'):
                _loop_vars = {}
                pass
                t_1.extend((
                    '<li>',
                    escape(l_2_caution),
                    '</li>\n',
                ))
            l_2_caution = missing
            t_1.append(
                '</ul>\n',
            )
        t_1.append(
            '</section>\n',
        )
        return concat(t_1)
    context.exported_vars.add('stage')
    context.vars['stage'] = l_0_stage = Macro(environment, macro, 'stage', ('one', 'key'), False, False, False, context.eval_ctx.autoescape)
    yield from parent_template.root_render_func(context)

def block_kind(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    pass
    yield 'checklist'

def block_body(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0__ = resolve('_')
    l_0_list = resolve('list')
    try:
        t_2 = environment.filters['format']
    except KeyError:
        @internalcode
        def t_2(*unused):
            raise TemplateRuntimeError("No filter named 'format' found.")
    pass
    yield '<p class="find"><label>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Find a piece', _block_vars=_block_vars))
    yield ' <input type="search" id="find" autocomplete="off"></label> <span id="found" role="status"></span></p>\n<section>\n<h2>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Before cutting', _block_vars=_block_vars))
    yield '</h2>\n'
    l_1_loop = missing
    for l_1_one, l_1_loop in LoopContext(environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'before'), undefined):
        l_1_stage = resolve('stage')
        _loop_vars = {}
        pass
        yield escape(context.call((undefined(name='stage') if l_1_stage is missing else l_1_stage), l_1_one, t_2('before-%d', environment.getattr(l_1_loop, 'index')), _loop_vars=_loop_vars))
    l_1_loop = l_1_one = l_1_stage = missing
    yield '<section class="stage gear">\n<h3>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'Tools and gear', _block_vars=_block_vars))
    yield '</h3>\n<ul class="steps">\n'
    l_1_loop = missing
    for l_1_thing, l_1_loop in LoopContext(environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'gear'), undefined):
        _loop_vars = {}
        pass
        yield '<li><label><input type="checkbox" data-tick="gear:'
        yield escape(environment.getattr(l_1_loop, 'index'))
        yield '"> '
        yield escape(l_1_thing)
        yield '</label></li>\n'
    l_1_loop = l_1_thing = missing
    yield '</ul>\n</section>\n</section>\n<section>\n<h2>'
    yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'In every room', _block_vars=_block_vars))
    yield '</h2>\n'
    l_1_loop = missing
    for l_1_one, l_1_loop in LoopContext(environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'during'), undefined):
        l_1_stage = resolve('stage')
        _loop_vars = {}
        pass
        yield escape(context.call((undefined(name='stage') if l_1_stage is missing else l_1_stage), l_1_one, t_2('during-%d', environment.getattr(l_1_loop, 'index')), _loop_vars=_loop_vars))
    l_1_loop = l_1_one = l_1_stage = missing
    yield '</section>\n'
    for l_1_room in environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'rooms'):
        _loop_vars = {}
        pass
        yield '<section class="room">\n<h2>'
        yield escape(environment.getattr(l_1_room, 'name'))
        yield '</h2>\n'
        if environment.getattr(l_1_room, 'note'):
            pass
            yield '<p class="note">'
            yield escape(environment.getattr(l_1_room, 'note'))
            yield '</p>'
        yield '<p class="walls"><b>'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'walls measured again', _loop_vars=_loop_vars))
        yield '</b>\n'
        for (l_2_label, l_2_length) in environment.getattr(l_1_room, 'walls'):
            _loop_vars = {}
            pass
            yield '<label><input type="checkbox" data-tick="wall:'
            yield escape(environment.getattr(l_1_room, 'name'))
            yield ':'
            yield escape(l_2_label)
            yield '"> '
            yield escape(l_2_label)
            yield ' '
            yield escape(l_2_length)
            yield '</label>\n'
        l_2_label = l_2_length = missing
        yield '</p>\n<table class="boxes">\n<thead><tr><th scope="col">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'piece', _loop_vars=_loop_vars))
        yield '</th><th scope="col" class="number">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'length', _loop_vars=_loop_vars))
        yield '</th><th scope="col" class="number">'
        yield escape(context.call((undefined(name='_') if l_0__ is missing else l_0__), 'nails', _loop_vars=_loop_vars))
        yield '</th>'
        for (l_2_key, l_2_column) in environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'columns'):
            _loop_vars = {}
            pass
            yield '<th scope="col" class="box">'
            yield escape(l_2_column)
            yield '</th>'
        l_2_key = l_2_column = missing
        yield '</tr></thead>\n<tbody>\n'
        for l_2_piece in environment.getattr(l_1_room, 'pieces'):
            _loop_vars = {}
            pass
            yield '<tr data-piece="'
            yield escape(environment.getattr(l_2_piece, 'id'))
            yield '"><th scope="row">'
            yield escape(environment.getattr(l_2_piece, 'id'))
            yield '</th><td class="number">'
            yield escape(environment.getattr(l_2_piece, 'length'))
            yield '</td><td class="number">'
            yield escape(environment.getattr(l_2_piece, 'nails'))
            yield '</td>\n'
            for (l_3_key, l_3_column) in environment.getattr((undefined(name='list') if l_0_list is missing else l_0_list), 'columns'):
                _loop_vars = {}
                pass
                yield '<td class="box"><input type="checkbox" data-tick="'
                yield escape(environment.getattr(l_2_piece, 'id'))
                yield ':'
                yield escape(l_3_key)
                yield '" aria-label="'
                yield escape(environment.getattr(l_2_piece, 'id'))
                yield ' '
                yield escape(l_3_column)
                yield '"'
                if (l_3_key in environment.getattr(l_2_piece, 'done')):
                    pass
                    yield ' checked'
                yield '></td>\n'
            l_3_key = l_3_column = missing
            yield '</tr>\n'
        l_2_piece = missing
        yield '</tbody>\n</table>\n</section>\n'
    l_1_room = missing

def block_script(context, missing=missing):
    resolve = context.resolve_or_missing
    undefined = environment.undefined
    concat = environment.concat
    cond_expr_undefined = Undefined
    if 0: yield None
    _block_vars = {}
    l_0_script = resolve('script')
    pass
    yield '<script>'
    yield escape((undefined(name='script') if l_0_script is missing else l_0_script))
    yield '</script>'

blocks = {'kind': block_kind, 'body': block_body, 'script': block_script}
debug_info = '1=13&3=16&5=25&7=29&8=34&11=45&13=50&14=55&2=70&20=80&21=97&23=99&24=102&26=109&28=112&29=116&35=122&36=125&38=132&40=136&41=138&42=144&43=146&44=150&48=160&50=174&51=178&52=186&53=190&62=208'
